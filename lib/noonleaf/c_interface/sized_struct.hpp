#pragma once

#include <cstddef>
#include <cstring>
#include <string>
#include <type_traits>

#include "noonleaf/c_interface/guarded.hpp"

namespace noonleaf::c_interface {

/// Every struct of the interface is made of pieces of this size, so that an older, shorter one ends between
/// members.
inline constexpr std::size_t struct_piece = 8;

/// Throws    CallRefused unless the struct ends where some version of the interface ended it
inline void require_size(std::size_t size, std::size_t known, const char* parameter) {
  if (size >= 2 * struct_piece && size <= known && size % struct_piece == 0) return;
  const std::string found = "its size says " + std::to_string(size) + " bytes; ";
  if (size > known && size % struct_piece == 0)
    throw CallRefused(parameter, found + "this library knows " + std::to_string(known),
                      "the program was compiled for a newer library: install that one");
  throw CallRefused(parameter, found + "it is " + std::to_string(known),
                    "set size to sizeof the struct before the call");
}

/// A caller's struct in full: what an older, shorter one does not have is as in `defaults`.
/// Throws    CallRefused for a null pointer or a size that cannot be
template <class Struct>
Struct taken(const Struct* given, const Struct& defaults, const char* parameter) {
  static_assert(std::is_trivially_copyable_v<Struct> && sizeof(Struct) % struct_piece == 0);
  const std::size_t size = required(given, parameter).size;
  require_size(size, sizeof(Struct), parameter);
  Struct full = defaults;
  std::memcpy(&full, given, size);
  return full;
}

/// Fills a caller's struct as far as it reaches; its size stays. The size has been checked.
template <class Struct>
void fill(Struct* wanted, Struct full) {
  full.size = wanted->size;
  std::memcpy(wanted, &full, full.size);
}

/// The check for a struct that a call fills, before any work is done.
template <class Struct>
void require_fillable(Struct* wanted, const char* parameter) {
  static_assert(std::is_trivially_copyable_v<Struct> && sizeof(Struct) % struct_piece == 0);
  require_size(required(wanted, parameter).size, sizeof(Struct), parameter);
}

// What the members of each struct are where the caller says nothing.
noonleaf_location default_location();
noonleaf_daily_columns default_daily_columns();
noonleaf_hourly_place default_hourly_place();
noonleaf_hourly_columns default_hourly_columns();
noonleaf_soil default_soil();
noonleaf_planting default_planting();
noonleaf_ground default_ground();
noonleaf_wetness default_wetness();
noonleaf_balance_settings default_balance_settings();
noonleaf_balance_days default_balance_days();
noonleaf_run_request default_run_request();
noonleaf_wilt_request default_wilt_request();
noonleaf_moment default_moment();
noonleaf_week_request default_week_request();

}  // namespace noonleaf::c_interface
