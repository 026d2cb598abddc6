#pragma once

/* The C interface of noonleaf: what other languages and long-lived programs build on. It is promised across
 * versions; docs/c_interface.md has the rules and examples.
 *
 * Structs    Begin with their size in bytes. Set it (sizeof), then call the struct's _defaults function where
 *            it has one: that fills the rest with "missing" (NaN) or the usual value. A program compiled with
 *            an older, shorter struct keeps working: what it lacks takes its default. A struct longer than
 *            this library knows is refused, so that no wish is passed over in silence.
 *
 * Missing    NaN, always. A column whose data is NULL is missing throughout.
 *
 * Status     Every call that can fail returns one. `problems`, the last parameter, may be NULL; else it
 *            receives a list of what is wrong, or NULL where nothing is. Free it: noonleaf_problems_free.
 *
 * Memory     Columns stay in the caller's memory and are read and written where they are. Texts that a call
 *            hands out are freed with noonleaf_text_free; texts inside a noonleaf_problem live as long as
 *            their list. No call keeps a pointer of the caller's after it returns.
 *
 * Threads    The library has no state of its own. A handle never changes once it is made: any number of
 *            threads may use it at the same time. Memory that a call writes to must belong to that call
 *            alone; free a handle when no call uses it any more.
 *
 * Exceptions None leaves the library. Memory that runs out is a status, but for the plans
 * (noonleaf_today_json, noonleaf_week_json): what writes their JSON may end the program then.
 */

#include <stddef.h>
#include <stdint.h>

#pragma GCC visibility push(default)
#ifdef __cplusplus
extern "C" {
#endif

/// How a call went.
typedef int32_t noonleaf_status;
enum {
  noonleaf_done = 0,           ///< all is done
  noonleaf_rows_refused = 1,   ///< done, but for rows outside an accepted range: NaN there, and listed
  noonleaf_input_refused = 2,  ///< a value, a file, a name: the problem list says which, and how to mend it
  noonleaf_call_refused =
      3,  ///< a null pointer, a size, a choice that does not exist: a fault of the calling program
  noonleaf_no_memory = 4,  ///< there is no list then
  noonleaf_fault = 5       ///< a fault of the library: please report it with the list's text
};

/// The number of this interface. It rises when something is added; what is there stays as it is.
enum { noonleaf_interface = 1 };

/// Result    noonleaf_interface of the library itself: not below the header's, or the library is too old
int32_t noonleaf_interface_number(void);

/// Result    "0.1.0", of the library; never freed
const char* noonleaf_version(void);

/// Frees a text that a call handed out. NULL is fine.
void noonleaf_text_free(char* text);

// ---------------------------------------------------------------------------------------------- problems

/// A list of what is wrong, in the order in which it was found.
typedef struct noonleaf_problems noonleaf_problems;

/// One thing that is wrong, and where. Texts are UTF-8, never NULL, empty where not known.
typedef struct noonleaf_problem {
  size_t size;          ///< sizeof(noonleaf_problem) of the caller
  const char* file;     ///< as the caller named it; empty where no file is involved
  uint64_t row;         ///< of the columns, from 0
  uint64_t line;        ///< from 1; 0 = none
  uint64_t column;      ///< from 1, counts characters; 0 = none
  const char* field;    ///< the member, parameter, CSV column or key: "t_max_c"
  const char* text;     ///< what was found, exactly
  const char* message;  ///< what is wrong, with the permitted range
  const char* fix;      ///< one thing to do next
} noonleaf_problem;

/// Result    how many; 0 for NULL. Rows that are refused are all in the list, but only the first thousand
///           with the field and the value that is wrong
size_t noonleaf_problems_count(const noonleaf_problems* problems);

/// Input     index  below noonleaf_problems_count
/// Result    `problem` filled
noonleaf_status noonleaf_problems_at(const noonleaf_problems* problems, size_t index,
                                     noonleaf_problem* problem);

/// All of them as a person reads them, twenty at most and a count of the rest.
noonleaf_status noonleaf_problems_text(const noonleaf_problems* problems, char** text);

/// NULL is fine.
void noonleaf_problems_free(noonleaf_problems* problems);

// ---------------------------------------------------------------------------------- columns, dates, places

/// Values in the caller's memory: value i is data[i * stride].
typedef struct noonleaf_column {
  const double* data;  ///< NULL = missing throughout, unless the member says otherwise
  size_t count;        ///< as many as the call has rows; not looked at where data is NULL
  ptrdiff_t
      stride;  ///< distance between neighbours, in values: 1 = side by side, -1 = backwards, 0 = one for all
} noonleaf_column;

/// Values that a call fills. A column of input may be filled over only where the struct says so.
typedef struct noonleaf_result_column {
  double* data;      ///< NULL = not wanted, unless the member says otherwise
  size_t count;      ///< as many as the call has rows
  ptrdiff_t stride;  ///< in values; not 0
} noonleaf_result_column;

/// Days in the caller's memory, as days since 1970-01-01. The least int64_t is a missing day.
typedef struct noonleaf_day_column {
  const int64_t* data;  ///< NULL = one day after the other
  size_t count;         ///< as many as the call has rows; not looked at where data is NULL
  ptrdiff_t stride;     ///< in values, as noonleaf_column
} noonleaf_day_column;

/// A day of the calendar; all zero = none.
typedef struct noonleaf_date {
  int32_t year;   ///< as the calendar counts it
  int16_t month;  ///< from 1
  int16_t day;    ///< from 1
} noonleaf_date;

/// Where a place lies.
typedef struct noonleaf_location {
  size_t size;           ///< set by noonleaf_location_defaults
  double latitude_deg;   ///< positive to the north
  double longitude_deg;  ///< positive to the east; needed for hours, not for days
  double elevation_m;    ///< above sea level
} noonleaf_location;
noonleaf_status noonleaf_location_defaults(noonleaf_location* location);

// ------------------------------------------------------------------------------ reference evapotranspiration

/// Which publication's equation, and which surface.
enum { noonleaf_fao56 = 0, noonleaf_asce = 1 };
enum { noonleaf_short_crop = 0, noonleaf_tall_crop = 1 };
/// What to take for the sun of the hours before the first evening.
enum { noonleaf_humid = 0, noonleaf_arid = 1 };

/// A place with the sun of its every day of the year, worked out once for all years.
typedef struct noonleaf_site noonleaf_site;

/// Input     latitude_deg -90 to 90, elevation_m -500 to 9000
/// Result    *site, to be freed with noonleaf_site_free; NULL unless done
noonleaf_status noonleaf_site_make(const noonleaf_location* location, noonleaf_site** site,
                                   noonleaf_problems** problems);
/// NULL is fine.
void noonleaf_site_free(noonleaf_site* site);

/// Many days of weather at one site. The rows are those of et0_mm_d.
typedef struct noonleaf_daily_columns {
  size_t size;                      ///< set by noonleaf_daily_columns_defaults
  noonleaf_date first_day;          ///< of row 0, where the days follow each other
  noonleaf_day_column day;          ///< else the day of each row
  noonleaf_column t_max_c;          ///< -60 to 60
  noonleaf_column t_min_c;          ///< -60 to 60, not above t_max_c
  noonleaf_column ea_kpa;           ///< actual vapour pressure, 0 to 20
  noonleaf_column rs_mj_m2_d;       ///< solar radiation, 0 to 60
  noonleaf_column u2_m_s;           ///< wind at 2 m, 0 to 60
  noonleaf_column pressure_kpa;     ///< 30 to 110; NULL = from the elevation
  noonleaf_column g_mj_m2_d;        ///< heat into the soil, -30 to 30; NULL = 0
  int32_t equation;                 ///< noonleaf_fao56 (default), noonleaf_asce
  int32_t surface;                  ///< noonleaf_short_crop (default), noonleaf_tall_crop (asce only)
  noonleaf_result_column et0_mm_d;  ///< required; may be one of the input columns
} noonleaf_daily_columns;
noonleaf_status noonleaf_daily_columns_defaults(noonleaf_daily_columns* columns);

/// Daily reference evapotranspiration of many days.
///
/// Equation  FAO-56 eq. 6, or ASCE-EWRI's standardized equation
/// Source    FAO-56 (Allen et al. 1998), ch. 2; ASCE-EWRI 2005, eq. 1 and table 1
/// Result    [mm d⁻¹], as the C++ doors: below 0 where dew forms; the same numbers for any stride
/// Missing   NaN in, NaN out, not listed
/// Status    noonleaf_rows_refused where a row lies outside a range
noonleaf_status noonleaf_daily_et0(const noonleaf_site* site, const noonleaf_daily_columns* columns,
                                   noonleaf_problems** problems);

/// A place with the sun of its every period of the year, for periods of one length that begin at the same
/// times of the day (UTC).
typedef struct noonleaf_hourly_site noonleaf_hourly_site;

/// What an hourly site is made of.
typedef struct noonleaf_hourly_place {
  size_t size;           ///< set by noonleaf_hourly_place_defaults
  double latitude_deg;   ///< as noonleaf_location; needed
  double longitude_deg;  ///< needed
  double elevation_m;    ///< needed
  int64_t begin_s;       ///< beginning of any one period, in seconds since 1970-01-01 00:00 UTC
  int64_t length_s;      ///< 60 to 3600, a divisor of the day; default 3600
  int32_t equation;      ///< noonleaf_fao56 (default), noonleaf_asce
  int32_t unused;        ///< 0
} noonleaf_hourly_place;
noonleaf_status noonleaf_hourly_place_defaults(noonleaf_hourly_place* place);

/// Result    *site, to be freed with noonleaf_hourly_site_free; NULL unless done
noonleaf_status noonleaf_hourly_site_make(const noonleaf_hourly_place* place, noonleaf_hourly_site** site,
                                          noonleaf_problems** problems);
/// NULL is fine.
void noonleaf_hourly_site_free(noonleaf_hourly_site* site);

/// Periods of weather, one after the other without a gap; one left out of the record is a row of NaN. The
/// rows are those of et0_mm_h.
typedef struct noonleaf_hourly_columns {
  size_t size;                      ///< set by noonleaf_hourly_columns_defaults
  int64_t first_begin_s;            ///< of row 0, in seconds since 1970-01-01 00:00 UTC
  noonleaf_column t_c;              ///< -60 to 60
  noonleaf_column ea_kpa;           ///< 0 to 20
  noonleaf_column rs_mj_m2_h;       ///< per hour, whatever the length; 0 to 6
  noonleaf_column u2_m_s;           ///< at 2 m, 0 to 60
  noonleaf_column pressure_kpa;     ///< 30 to 110; NULL = from the elevation
  int32_t surface;                  ///< noonleaf_short_crop (default), noonleaf_tall_crop (asce only)
  int32_t dryness;                  ///< noonleaf_humid (default), noonleaf_arid
  noonleaf_result_column et0_mm_h;  ///< required; may be one of the input columns
} noonleaf_hourly_columns;
noonleaf_status noonleaf_hourly_columns_defaults(noonleaf_hourly_columns* columns);

/// Hourly reference evapotranspiration of many periods, the cloudiness of the night carried from the
/// afternoon.
///
/// Equation  FAO-56 eq. 53, or ASCE-EWRI's standardized equation
/// Source    FAO-56, ch. 4; ASCE-EWRI 2005
/// Result    [mm h⁻¹], per hour whatever the length; a little below 0 in many nights
/// Missing, Status  as noonleaf_daily_et0
noonleaf_status noonleaf_hourly_et0(const noonleaf_hourly_site* site, const noonleaf_hourly_columns* columns,
                                    noonleaf_problems** problems);

// ----------------------------------------------------------------------------------------------- the balance

/// How much water a soil holds.
typedef struct noonleaf_soil {
  size_t size;                  ///< set by noonleaf_soil_defaults
  double field_capacity_m3_m3;  ///< needed
  double wilting_point_m3_m3;   ///< needed
  double saturation_m3_m3;      ///< may be missing
  double conductivity_mm_h;     ///< of the saturated soil; may be missing
  double rew_mm;                ///< readily evaporable water; missing = estimated from the nearest texture
  double evaporation_depth_m;   ///< Ze, 0.10 to 0.15; default 0.10
} noonleaf_soil;
noonleaf_status noonleaf_soil_defaults(noonleaf_soil* soil);

/// A soil by its texture class.
///
/// Source    FAO-56 (Allen et al. 1998), Table 19, the middle of the ranges
/// Input     texture  "sandy_loam"; the nearest is named where it is not known
noonleaf_status noonleaf_soil_of_texture(const char* texture, noonleaf_soil* soil,
                                         noonleaf_problems** problems);

/// How a planting began, and which end of the printed range of root depths it gets.
enum { noonleaf_sown = 0, noonleaf_transplanted = 1 };
enum { noonleaf_irrigated = 0, noonleaf_rainfed = 1 };

/// One crop in the ground.
typedef struct noonleaf_planting {
  size_t size;                ///< set by noonleaf_planting_defaults
  const char* crop;           ///< "tomato": a row of `noonleaf crops`
  noonleaf_date start;        ///< sown, transplanted or, for a perennial, planted
  int32_t method;             ///< noonleaf_sown (default), noonleaf_transplanted
  int32_t rooting;            ///< noonleaf_irrigated (default), noonleaf_rainfed
  double root_limit_m;        ///< raised bed, hardpan; missing = none
  double u2_m_s;              ///< mean wind of the season, for the climate adjustment; default 2
  double rh_min_pct;          ///< mean daily minimum humidity of the season; default 45
  const char* region;         ///< words of a stage-length region; NULL = the row planted nearest in the year
  noonleaf_date development;  ///< first day that somebody saw of it; all zero = nobody looked
  noonleaf_date mid_season;   ///< likewise
  noonleaf_date late_season;  ///< likewise
  noonleaf_date over;         ///< first day after the season, likewise
} noonleaf_planting;
noonleaf_status noonleaf_planting_defaults(noonleaf_planting* planting);

/// Water in the ground under a planting, as depths below field capacity.
typedef struct noonleaf_ground {
  size_t size;             ///< set by noonleaf_ground_defaults
  double de_mm;            ///< top layer where exposed and wetted by irrigation and rain
  double de_rain_mm;       ///< top layer where exposed and wetted by rain only
  double dr_mm;            ///< root zone
  double lower_mm;         ///< below the roots, down to profile_depth_m
  double root_depth_m;     ///< the boundary between both
  double profile_depth_m;  ///< bottom of the account
  double wetted_frac;      ///< of the last wetting; default 1
} noonleaf_ground;
noonleaf_status noonleaf_ground_defaults(noonleaf_ground* ground);

/// How wet the ground is, the same at every depth.
typedef struct noonleaf_wetness {
  size_t size;             ///< set by noonleaf_wetness_defaults
  double depleted_frac;    ///< 0 = field capacity, 1 = wilting point
  double root_depth_m;     ///< 0.01 to 10
  double profile_depth_m;  ///< not shallower than roots or evaporation depth
} noonleaf_wetness;
noonleaf_status noonleaf_wetness_defaults(noonleaf_wetness* wetness);

/// The state to begin an account with.
noonleaf_status noonleaf_ground_of(const noonleaf_soil* soil, const noonleaf_wetness* wetness,
                                   noonleaf_ground* ground, noonleaf_problems** problems);

/// Choices of the balance; the first of each is the default.
enum { noonleaf_dual = 0, noonleaf_single = 1 };
enum { noonleaf_adjusted_daily = 0, noonleaf_fixed = 1 };
enum { noonleaf_coupled = 0, noonleaf_as_printed = 1 };
enum { noonleaf_roots_ignored = 0, noonleaf_roots_drawn = 1 };
enum { noonleaf_emitters_open = 0, noonleaf_emitters_under_canopy = 1 };

/// What stays the same from day to day.
typedef struct noonleaf_balance_settings {
  size_t size;                ///< set by noonleaf_balance_settings_defaults
  double irrigated_frac;      ///< fw, share of the ground that irrigation wets; default 1
  double curve_number;        ///< for runoff of rain; missing = none (framed bed)
  double salt_stress;         ///< factor on Ks; default 1
  double evaporation_factor;  ///< what a mulch leaves of soil evaporation; default 1
  int32_t method;             ///< noonleaf_dual (Kcb + Ke), noonleaf_single (Kc)
  int32_t depletion;          ///< noonleaf_adjusted_daily: p for the day's ETc, noonleaf_fixed
  int32_t surface;            ///< noonleaf_coupled: De agrees with Dr, noonleaf_as_printed: FAO-56 of 1998
  int32_t top_roots;          ///< noonleaf_roots_ignored, noonleaf_roots_drawn: Tew of shallow-rooted crops
  int32_t emitters;           ///< noonleaf_emitters_open, noonleaf_emitters_under_canopy
  int32_t unused;             ///< 0
} noonleaf_balance_settings;
noonleaf_status noonleaf_balance_settings_defaults(noonleaf_balance_settings* settings);

/// Days of one planting, one after the other. The rows are those of et0_mm_d.
typedef struct noonleaf_balance_days {
  size_t size;                      ///< set by noonleaf_balance_days_defaults
  noonleaf_date first_day;          ///< of row 0
  noonleaf_column et0_mm_d;         ///< required
  noonleaf_column rain_mm;          ///< on the bed, before the day's demand; NULL = none on any day
  noonleaf_column irrigation_mm;    ///< mean depth that infiltrates, before the day's demand; NULL = none
  noonleaf_column evening_rain_mm;  ///< after it; NULL = none
  noonleaf_column evening_irrigation_mm;  ///< after it; NULL = none
  noonleaf_column u2_m_s;      ///< wind at 2 m of the day, for Kc max; missing = by the planting's climate
  noonleaf_column rh_min_pct;  ///< lowest relative humidity of the day, likewise
  noonleaf_column observed_dr_mm;  ///< root-zone depletion found that morning; missing = nobody looked
  noonleaf_column ground_closed;   ///< not 0 = snow or frozen ground: the account stands still; NULL = open
  noonleaf_result_column dr_mm;    ///< root-zone depletion at the day's close
  noonleaf_result_column de_mm;    ///< top-layer depletion at the day's close
  noonleaf_result_column taw_mm;   ///< total available water
  noonleaf_result_column raw_mm;   ///< readily available water
  noonleaf_result_column root_depth_m;         ///< Zr
  noonleaf_result_column kcb;                  ///< basal coefficient; the single Kc where that is chosen
  noonleaf_result_column ke;                   ///< soil evaporation coefficient
  noonleaf_result_column ks;                   ///< stress coefficient, 1 = none
  noonleaf_result_column etc_adj_mm_d;         ///< transpiration and evaporation as they came about
  noonleaf_result_column transpiration_mm;     ///< Ks Kcb ET0
  noonleaf_result_column evaporation_mm;       ///< Ke ET0
  noonleaf_result_column runoff_mm;            ///< part of the rain
  noonleaf_result_column deep_percolation_mm;  ///< out of the root zone
  noonleaf_result_column drainage_mm;          ///< out of the profile
} noonleaf_balance_days;
noonleaf_status noonleaf_balance_days_defaults(noonleaf_balance_days* days);

/// What the days add up to. Days without a result count for nothing.
typedef struct noonleaf_balance_totals {
  size_t size;              ///< sizeof(noonleaf_balance_totals) of the caller
  double rain_mm;           ///< on the bed
  double runoff_mm;         ///< part of the rain
  double irrigation_mm;     ///< infiltrated
  double transpiration_mm;  ///< through the plants
  double evaporation_mm;    ///< from the soil
  double drainage_mm;       ///< out of the profile
  double correction_mm;     ///< change of Dr by observations
  double stress_mm;         ///< transpiration lost to dryness
  uint64_t missing_days;    ///< days without a result
} noonleaf_balance_totals;

/// The soil-water balance of one planting over consecutive days.
///
/// Equation  FAO-56 eq. 69, 71-79 (dual) or 58 (single), 80-88
/// Source    FAO-56 (Allen et al. 1998), ch. 7 and 8; what departs from it: docs/balance.md
/// Input     settings  NULL = the defaults; ground  the state at the beginning; totals  may be NULL
/// Result    the result columns that are wanted; *ground is the state at the end, to go on from
/// Missing   ET0 missing: NaN from that day on, until a day with an observed depletion begins the account
///           anew
/// Status    noonleaf_input_refused: the list names the row; rows before it are written, *ground is not
/// Note      Result columns must not lie over input columns here.
noonleaf_status noonleaf_balance(const noonleaf_soil* soil, const noonleaf_planting* planting,
                                 const noonleaf_balance_settings* settings, const noonleaf_balance_days* days,
                                 noonleaf_ground* ground, noonleaf_balance_totals* totals,
                                 noonleaf_problems** problems);

// ---------------------------------------------------------------------------------------------- the run time

/// Where a sprinkler's rate comes from: it decides which losses are still to be taken off.
enum {
  noonleaf_cans_in_bed = 0,
  noonleaf_flow_and_area = 1,
  noonleaf_bucket = 2,
  noonleaf_drip_spacing = 3,
  noonleaf_guess = 4
};
/// What the area under a flow is.
enum { noonleaf_beds_only = 0, noonleaf_all_wetted = 1 };

/// A depth to be put into a bed, and by which sprinkler.
typedef struct noonleaf_run_request {
  size_t size;             ///< set by noonleaf_run_request_defaults
  double net_depth_mm;     ///< what the soil is to take, 0 to 300
  double rate_mm_h;        ///< application rate, above 0 to 1000
  double du_lq_frac;       ///< uniformity of the low quarter, 0.05 to 1; default 1
  double off_target_frac;  ///< share of the water beside the beds, 0 to 0.95; default 0
  double spray_loss_frac;  ///< share lost in the air, 0 to 0.5; default 0
  double flow_l_min;       ///< from the tap; missing = not known
  double bed_area_m2;      ///< missing = not known
  double shortest_min;     ///< of a run; default 2
  double longest_min;      ///< of a run; default 120
  int32_t basis;           ///< noonleaf_guess (default) and the others above
  int32_t area;            ///< noonleaf_beds_only (default), noonleaf_all_wetted
} noonleaf_run_request;
noonleaf_status noonleaf_run_request_defaults(noonleaf_run_request* request);

/// Which rule made a run longer than an even sprinkler's, and which limit changed it.
enum { noonleaf_even = 0, noonleaf_lower_half = 1, noonleaf_lower_half_capped = 2 };
enum {
  noonleaf_no_limit = 0,
  noonleaf_not_needed = 1,
  noonleaf_raised_to_shortest = 2,
  noonleaf_cut_to_longest = 3
};

/// A run with the numbers on the way.
typedef struct noonleaf_run {
  size_t size;                  ///< sizeof(noonleaf_run) of the caller
  double minutes;               ///< to open the tap: rounded, within the limits; 0 when none is needed
  double exact_min;             ///< before rounding and limits
  double multiplier;            ///< for the sprinkler's unevenness
  double depth_in_bed_mm;       ///< mean that has to land in the bed
  double delivered_frac;        ///< share of the rate that does
  double gross_depth_mm;        ///< at the rate, before losses
  double mean_depth_mm;         ///< what these minutes bring on average
  double low_quarter_depth_mm;  ///< and into the driest quarter
  double left_over_net_mm;      ///< what the longest run leaves for another day
  double litres_in_bed;         ///< missing without an area
  double litres_from_tap;       ///< missing without a flow
  int32_t multiplier_rule;      ///< noonleaf_even ...
  int32_t limit;                ///< noonleaf_no_limit ...
} noonleaf_run;

/// Net depth to the minutes a person opens the tap.
///
/// Equation  in bed = net M;  gross = in bed / delivered;  minutes = 60 gross / rate
/// Source    docs/sprinkler.md
noonleaf_status noonleaf_run_time(const noonleaf_run_request* request, noonleaf_run* run,
                                  noonleaf_problems** problems);

/// What minutes of running put into a bed.
typedef struct noonleaf_depth {
  size_t size;            ///< sizeof(noonleaf_depth) of the caller
  double mean_mm;         ///< for the balance
  double low_quarter_mm;  ///< driest quarter
} noonleaf_depth;

/// Minutes really run to the depth in the bed, before any runoff: noonleaf_run_time turned round, without the
/// multiplier. Input: the sprinkler of `request`; minutes 0 to 2880.
noonleaf_status noonleaf_depth_of_minutes(const noonleaf_run_request* request, double minutes,
                                          noonleaf_depth* depth, noonleaf_problems** problems);

// ------------------------------------------------------------------------------------------------------ wilt

/// What a person saw at dawn.
enum { noonleaf_not_looked = 0, noonleaf_upright = 1, noonleaf_hanging = 2 };

/// One planting on the morning of a day, and the day's weather.
typedef struct noonleaf_wilt_request {
  size_t size;                      ///< set by noonleaf_wilt_request_defaults
  noonleaf_date date;               ///< by the wall clock
  double utc_offset_h;              ///< wall clock minus UTC, daylight saving included
  double latitude_deg;              ///< -66 to 66
  double longitude_deg;             ///< positive to the east
  double elevation_m;               ///< above sea level
  double t_max_c;                   ///< highest of the day, which is spread over its hours
  double t_min_c;                   ///< lowest of the day
  double ea_kpa;                    ///< mean actual vapour pressure
  double rs_mj_m2_d;                ///< solar radiation
  double u2_m_s;                    ///< mean wind at 2 m
  double t_max_before_c;            ///< of the day before; missing = as this day
  double t_min_after_c;             ///< of the day after; missing = as this day
  noonleaf_column hour_t_c;         ///< 24 measured hours of the wall clock, used where they are not missing
  noonleaf_column hour_ea_kpa;      ///< likewise
  noonleaf_column hour_rs_mj_m2_h;  ///< likewise
  noonleaf_column hour_u2_m_s;      ///< likewise
  double transpiration_mm_d;        ///< Kcb ET0 of the day, without stress
  const char* crop;                 ///< "tomato": gives the three below where they are missing; may be NULL
  double p_frac;                    ///< depletion fraction of FAO-56 Table 22
  double turgor_loss_mpa;           ///< leaf potential at turgor loss, negative
  double sunlit_factor;             ///< demand of leaves in full sun over the mean of the canopy, 1 to 2
  double taw_mm;                    ///< of the root zone on this day
  double raw_mm;                    ///< of the root zone on this day
  double dr_mm;                     ///< depletion at dawn
  double root_depth_m;              ///< missing = deep
  double field_capacity_m3_m3;      ///< of the soil; needed
  double wilting_point_m3_m3;       ///< of the soil; needed
  double saturation_m3_m3;          ///< may be missing
  double days_since_transplant;     ///< missing = was sown, or stands for long
  double leaf_deficit_mm;  ///< what the leaves still lack: of yesterday's noonleaf_wilt_day; default 0
  int32_t dawn_look;       ///< noonleaf_not_looked (default) ...
  int32_t unused;          ///< 0
  noonleaf_result_column hour_demand_mm_h;         ///< 24 hours from that of sunrise on
  noonleaf_result_column hour_supply_mm_h;         ///< likewise
  noonleaf_result_column hour_leaf_potential_mpa;  ///< likewise
  noonleaf_result_column hour_clock_h;             ///< hour of the wall clock; 24 and up = next day
  noonleaf_result_column hour_hangs;               ///< 1 while the leaves hang, else 0
} noonleaf_wilt_request;
noonleaf_status noonleaf_wilt_request_defaults(noonleaf_wilt_request* request);

/// What the day will look like.
enum {
  noonleaf_comfortable = 0,
  noonleaf_droop = 1,           ///< hangs in the heat over soil moist enough, recovers before dawn
  noonleaf_stress = 2,          ///< depleted beyond what the crop bears without loss
  noonleaf_dry_soil_wilt = 3,   ///< does not get its turgor back by the next dawn
  noonleaf_wet_soil_droop = 4,  ///< seen hanging at dawn over moist soil: neither thirst nor heat
  noonleaf_unknown = 5          ///< a number is missing
};
/// What water would do.
enum {
  noonleaf_leave_alone = 0,
  noonleaf_wait_and_look = 1,  ///< look again at look_again_h, water if it still hangs
  noonleaf_water_next_run = 2,
  noonleaf_water_at_once = 3,
  noonleaf_look_at_the_roots = 4,  ///< do not water: root rot, disease, salt
  noonleaf_no_advice = 5
};

/// What a day does to one planting. Hours are of the wall clock; 24 and up = next day.
typedef struct noonleaf_wilt_day {
  size_t size;              ///< sizeof(noonleaf_wilt_day) of the caller
  int32_t verdict;          ///< noonleaf_comfortable ...
  int32_t advice;           ///< noonleaf_leave_alone ...
  int64_t droop_hours;      ///< hours without turgor
  double droop_from_h;      ///< first hour without turgor; missing = none
  double droop_until_h;     ///< missing = none, or no recovery by dawn
  double look_again_h;      ///< an hour after it should stand again
  double raw_passed_h;      ///< when Dr is beyond RAW; missing = not on this day
  double peak_hour_h;       ///< hour at which demand stands worst against supply
  double peak_demand_mm_h;  ///< in that hour
  double peak_supply_mm_h;  ///< in that hour
  double unmet_frac;        ///< share of the day's demand above supply
  double depletion_mm;      ///< at the next dawn, without rain or watering
  double leaf_deficit_mm;   ///< at the next dawn; above 0 = no turgor
} noonleaf_wilt_day;

/// How a planting gets through a day, hour by hour: droop in the heat, or dry-soil wilt.
///
/// Source    docs/heat.md
/// Missing   verdict and advice unknown
noonleaf_status noonleaf_wilt(const noonleaf_wilt_request* request, noonleaf_wilt_day* day,
                              noonleaf_problems** problems);

// ------------------------------------------------------------------------------------------------ the garden

/// A garden folder as it was when it was read: garden.toml, journal.csv, weather/.
typedef struct noonleaf_garden noonleaf_garden;

/// Input     folder  a path, UTF-8
/// Result    *garden, to be freed with noonleaf_garden_free; NULL unless done
/// Status    noonleaf_input_refused with the problems of all files together
noonleaf_status noonleaf_garden_read(const char* folder, noonleaf_garden** garden,
                                     noonleaf_problems** problems);
/// NULL is fine.
void noonleaf_garden_free(noonleaf_garden* garden);

/// A moment on the site's wall clock. The library reads no clock: the caller says when.
typedef struct noonleaf_moment {
  size_t size;         ///< set by noonleaf_moment_defaults
  noonleaf_date date;  ///< by the site's wall clock
  int64_t minute;      ///< since midnight, 0 to 1440; default 0
} noonleaf_moment;
noonleaf_status noonleaf_moment_defaults(noonleaf_moment* moment);

/// What to open on a day and which beds will hang, from a minute on.
///
/// Result    *json, shape "noonleaf.today" (docs/json.md), to be freed with noonleaf_text_free; NULL unless
///           done
noonleaf_status noonleaf_today_json(const noonleaf_garden* garden, const noonleaf_moment* moment, char** json,
                                    noonleaf_problems** problems);

/// Language of the words in a plan.
enum { noonleaf_english = 0, noonleaf_spanish = 1 };

/// What week is wanted.
typedef struct noonleaf_week_request {
  size_t size;              ///< set by noonleaf_week_request_defaults
  noonleaf_date made_date;  ///< now, on the site's wall clock
  int64_t made_minute;      ///< since midnight; no run of that day starts earlier
  noonleaf_date first_day;  ///< none = made_date
  int32_t days;             ///< 1 to 14; default 7
  int32_t language;         ///< noonleaf_english (default), noonleaf_spanish
} noonleaf_week_request;
noonleaf_status noonleaf_week_request_defaults(noonleaf_week_request* request);

/// The week's runs, who opens and closes, what is missed and why.
///
/// Result    *json, shape "noonleaf.week" (docs/json.md), to be freed with noonleaf_text_free; NULL unless
///           done
noonleaf_status noonleaf_week_json(const noonleaf_garden* garden, const noonleaf_week_request* request,
                                   char** json, noonleaf_problems** problems);

#ifdef __cplusplus
}
#endif
#pragma GCC visibility pop
