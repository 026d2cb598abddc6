# noonleaf as others use it: installed into empty folders, found in every way, built against and run.
# Static libraries are those of this build; the shared ones are built once more, without optimisation.
if(BUILD_SHARED_LIBS OR NOONLEAF_SANITIZE OR NOT NOONLEAF_CLI)
  return()
endif()
set(consumer "${CMAKE_CURRENT_SOURCE_DIR}/consumer")
set(work "${CMAKE_CURRENT_BINARY_DIR}/consumer")
set(environment SOURCE=${PROJECT_SOURCE_DIR} CXX=${CMAKE_CXX_COMPILER} COMMAND=${work}/static/bin/noonleaf
    # A clone that belongs to somebody else, as in a container, may be cloned all the same.
    GIT_CONFIG_COUNT=1 GIT_CONFIG_KEY_0=safe.directory GIT_CONFIG_VALUE_0=*)
if(CMAKE_CXX_COMPILER_LAUNCHER)
  list(APPEND environment CMAKE_CXX_COMPILER_LAUNCHER=${CMAKE_CXX_COMPILER_LAUNCHER})
endif()

add_test(NAME consumer.install_static COMMAND sh "${consumer}/install.sh" static "${PROJECT_BINARY_DIR}")
add_test(NAME consumer.install_shared COMMAND sh "${consumer}/install.sh" shared)
foreach(kind IN ITEMS static shared)
  set_tests_properties(consumer.install_${kind} PROPERTIES FIXTURES_SETUP ${kind}_copy
                       ENVIRONMENT "${environment};PREFIX=${work}/${kind};WORK=${work}/${kind}-build")
endforeach()

# noonleaf_consumer(WAY COPY…) COPY: the installed copies that it needs; the first is its PREFIX.
function(noonleaf_consumer way)
  list(GET ARGN 0 kind)
  add_test(NAME consumer.${way} COMMAND sh "${consumer}/build-and-run.sh" ${way})
  list(TRANSFORM ARGN APPEND _copy OUTPUT_VARIABLE copies)
  set_tests_properties(consumer.${way} PROPERTIES FIXTURES_REQUIRED "${copies}" SKIP_RETURN_CODE 77
                       ENVIRONMENT "${environment};PREFIX=${work}/${kind};WORK=${work}/${way}")
endfunction()

noonleaf_consumer(find_package_static static)
noonleaf_consumer(find_package_science static)
noonleaf_consumer(unknown_component static)
noonleaf_consumer(pkg_config_static static)
noonleaf_consumer(newer_standard static)
noonleaf_consumer(clang_headers static)  # skipped, and said so, where there is no clang
noonleaf_consumer(find_package_shared shared static)
noonleaf_consumer(pkg_config_shared shared static)
noonleaf_consumer(add_subdirectory static)
noonleaf_consumer(FetchContent static)
# These build libraries; two at once would only be in each other's way.
set_tests_properties(consumer.install_shared consumer.add_subdirectory consumer.FetchContent PROPERTIES PROCESSORS 2)

foreach(kind IN ITEMS DEB TGZ)
  add_test(NAME consumer.package_${kind} COMMAND sh "${consumer}/packages.sh" ${kind} "${PROJECT_BINARY_DIR}")
  set_tests_properties(consumer.package_${kind} PROPERTIES SKIP_RETURN_CODE 77
                       ENVIRONMENT "${environment};WORK=${work}/package-${kind}")
endforeach()

add_test(NAME consumer.reference COMMAND sh "${consumer}/reference.sh")
set_tests_properties(consumer.reference PROPERTIES FIXTURES_REQUIRED static_copy SKIP_RETURN_CODE 77
                     ENVIRONMENT "${environment};PREFIX=${work}/static;WORK=${work}/reference")
