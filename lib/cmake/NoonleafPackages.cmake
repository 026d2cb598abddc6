# Debian packages and a tarball: `cpack -G DEB` and `cpack -G TGZ` in the build folder.
#   noonleaf      the command with its pages, and shared libraries where they were built
#   noonleaf-dev  headers, static libraries, what CMake and pkg-config need
# The tarball holds both.
set(CPACK_PACKAGE_VENDOR "noonleaf")
set(CPACK_PACKAGE_CONTACT "The noonleaf maintainers <maintainers@noonleaf.invalid>")
set(CPACK_RESOURCE_FILE_LICENSE "${PROJECT_SOURCE_DIR}/docs/LICENSE")
set(CPACK_PACKAGE_DESCRIPTION
"From local weather files and a description of a garden, noonleaf works out how
much water each bed has lost, how long each sprinkler has to run, which beds are
about to wilt and why, and writes the week's watering plan for the people who
carry it out. Licence: Apache-2.0.")
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL runtime development)

set(CPACK_ARCHIVE_COMPONENT_INSTALL OFF)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_NAME noonleaf)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_SECTION science)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_DEPENDS tzdata)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME noonleaf-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
# What a static library leaves to be linked; a shared one needs the headers of Eigen and the library itself.
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS
    "libeigen3-dev, libhowardhinnant-date-dev, libfmt-dev, libtomlplusplus-dev, libical-dev")
if(BUILD_SHARED_LIBS)
  set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "libeigen3-dev, noonleaf (= ${PROJECT_VERSION})")
endif()
include(CPack)

file(WRITE "${PROJECT_BINARY_DIR}/copyright"
"Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/

Files: *
Copyright: the noonleaf authors
License: Apache-2.0
 On Debian systems the text of this licence is in /usr/share/common-licenses/Apache-2.0.
")
install(FILES "${PROJECT_BINARY_DIR}/copyright" DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/noonleaf COMPONENT runtime)
install(FILES "${PROJECT_BINARY_DIR}/copyright" DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/noonleaf-dev
        COMPONENT development)
