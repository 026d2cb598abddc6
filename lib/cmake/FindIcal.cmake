# libical without its storage library, as Ical::ical. Its own CMake file names programs that Debian has in other
# packages, so that find_package(LibIcal) fails on a machine that has all that is needed. Installed beside
# noonleafConfig.cmake, since a static noonleaf::readers brings libical to its consumers.
find_path(Ical_INCLUDE_DIR libical/ical.h)
find_library(Ical_LIBRARY ical)
include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Ical REQUIRED_VARS Ical_LIBRARY Ical_INCLUDE_DIR)
mark_as_advanced(Ical_INCLUDE_DIR Ical_LIBRARY)
if(Ical_FOUND AND NOT TARGET Ical::ical)
  add_library(Ical::ical UNKNOWN IMPORTED)
  set_target_properties(Ical::ical PROPERTIES IMPORTED_LOCATION "${Ical_LIBRARY}"
                        INTERFACE_INCLUDE_DIRECTORIES "${Ical_INCLUDE_DIR}")
endif()
