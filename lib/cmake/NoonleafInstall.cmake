# What an installed copy consists of: libraries, public headers, CMake package and pkg-config files.
# `runtime` is what a user of the command needs, `development` what a program built on the library needs.
include(CMakePackageConfigHelpers)

# noonleaf_install(TARGET COMPONENT DESCRIPTION text REQUIRES pc… [REQUIRES_STATIC pc…] [LIBS_STATIC -l…]
#                  [STATIC_PACKAGES cmake-package…])
# REQUIRES is what public headers include. The *_STATIC ones are what a static library leaves to be linked; a shared
# library has linked them already, and its consumers need not have them installed.
function(noonleaf_install target component)
  cmake_parse_arguments(arg "" "DESCRIPTION" "REQUIRES;REQUIRES_STATIC;LIBS_STATIC;STATIC_PACKAGES" ${ARGN})
  set(package_folder "${CMAKE_INSTALL_LIBDIR}/cmake/noonleaf")
  install(TARGETS ${target} EXPORT noonleaf_${component}
          RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT runtime
          LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT runtime NAMELINK_COMPONENT development
          ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT development
          FILE_SET HEADERS DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development)
  set_target_properties(${target} PROPERTIES INSTALL_RPATH "$ORIGIN")
  install(EXPORT noonleaf_${component} FILE noonleaf_${component}.cmake NAMESPACE noonleaf::
          DESTINATION ${package_folder} COMPONENT development)

  string(REPLACE "_" "-" pc_name ${target})
  get_target_property(type ${target} TYPE)
  set(pc_requires_private "")
  set(pc_libs_private "")
  if(type STREQUAL "STATIC_LIBRARY")
    list(JOIN arg_REQUIRES_STATIC " " pc_requires_private)
    list(JOIN arg_LIBS_STATIC " " pc_libs_private)
    string(APPEND pc_libs_private " ${CMAKE_THREAD_LIBS_INIT}")
    set_property(GLOBAL APPEND_STRING PROPERTY noonleaf_static_packages
                 "set(noonleaf_${component}_packages ${arg_STATIC_PACKAGES})\n")
  endif()
  list(JOIN arg_REQUIRES " " pc_requires)
  set(pc_description "${arg_DESCRIPTION}")
  set(pc_library ${target})
  file(RELATIVE_PATH pc_prefix "${CMAKE_INSTALL_FULL_LIBDIR}/pkgconfig" "${CMAKE_INSTALL_PREFIX}")
  string(REGEX REPLACE "/$" "" pc_prefix "${pc_prefix}")
  configure_file("${PROJECT_SOURCE_DIR}/lib/cmake/noonleaf.pc.in" "${PROJECT_BINARY_DIR}/${pc_name}.pc" @ONLY)
  install(FILES "${PROJECT_BINARY_DIR}/${pc_name}.pc" DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig
          COMPONENT development)
endfunction()

# The package file, after all components have said what they need.
function(noonleaf_install_package)
  set(package_folder "${CMAKE_INSTALL_LIBDIR}/cmake/noonleaf")
  # The C interface has static C++ libraries inside it; shared ones it loads.
  set(noonleaf_c_needs "")
  if(BUILD_SHARED_LIBS)
    set(noonleaf_c_needs "science readers report")
  endif()
  get_property(noonleaf_static_packages GLOBAL PROPERTY noonleaf_static_packages)
  configure_package_config_file("${PROJECT_SOURCE_DIR}/lib/cmake/noonleafConfig.cmake.in"
                                "${PROJECT_BINARY_DIR}/noonleafConfig.cmake" INSTALL_DESTINATION ${package_folder})
  # While the major version is 0, a minor version counts as a major.
  set(compatibility SameMajorVersion)
  if(PROJECT_VERSION_MAJOR EQUAL 0)
    set(compatibility SameMinorVersion)
  endif()
  write_basic_package_version_file("${PROJECT_BINARY_DIR}/noonleafConfigVersion.cmake" COMPATIBILITY ${compatibility})
  install(FILES "${PROJECT_BINARY_DIR}/noonleafConfig.cmake" "${PROJECT_BINARY_DIR}/noonleafConfigVersion.cmake"
                "${PROJECT_SOURCE_DIR}/lib/cmake/FindIcal.cmake"
          DESTINATION ${package_folder} COMPONENT development)
endfunction()
