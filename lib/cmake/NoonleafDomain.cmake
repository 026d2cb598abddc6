# noonleaf_library(TARGET COMPONENT [PUBLIC lib…] [PRIVATE lib…] [HEADERS_ONLY lib…])
# One of the libraries, with what every one of them needs. HEADERS_ONLY libraries are used while noonleaf is built and
# leave nothing to link: consumers need not have them, not even for a static library.
#
# Only what a public header declares is visible from outside a shared library: the namespace of each public header says
# so, everything else is hidden, but for the few internal headers that our own libraries share. Tests look into
# internals, so a shared build with tests hides nothing.
function(noonleaf_library target component)
  cmake_parse_arguments(arg "" "" "PUBLIC;PRIVATE;HEADERS_ONLY" ${ARGN})
  list(TRANSFORM arg_HEADERS_ONLY REPLACE "(.+)" "$<BUILD_INTERFACE:\\1>")
  add_library(${target})
  add_library(noonleaf::${component} ALIAS ${target})
  if(NOT TARGET noonleaf::noonleaf)
    add_library(noonleaf::noonleaf ALIAS ${target})
  endif()
  target_compile_features(${target} PUBLIC cxx_std_20)
  set_target_properties(${target} PROPERTIES CXX_EXTENSIONS OFF POSITION_INDEPENDENT_CODE ON EXPORT_NAME ${component}
                        VERSION ${PROJECT_VERSION} SOVERSION ${PROJECT_VERSION_MAJOR}.${PROJECT_VERSION_MINOR})
  if(NOT (BUILD_SHARED_LIBS AND NOONLEAF_TESTS))
    set_target_properties(${target} PROPERTIES CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON)
  endif()
  target_link_libraries(${target} PUBLIC ${arg_PUBLIC}
                        PRIVATE ${arg_PRIVATE} ${arg_HEADERS_ONLY} $<BUILD_INTERFACE:noonleaf_warnings>)
  target_include_directories(${target} PRIVATE ${PROJECT_SOURCE_DIR}/lib)
endfunction()

# A source per internal header, to see that each compiles alone: built on request (all_internal_headers).
if(PROJECT_IS_TOP_LEVEL)
  add_custom_target(all_internal_headers)
endif()

function(noonleaf_compile_alone target source)
  set(objects ${target}_internal_headers)
  if(NOT TARGET ${objects})
    add_library(${objects} OBJECT EXCLUDE_FROM_ALL)
    get_target_property(libraries ${target} LINK_LIBRARIES)
    target_link_libraries(${objects} PRIVATE ${target} ${libraries})
    target_include_directories(${objects} PRIVATE ${PROJECT_SOURCE_DIR}/lib)
    set_target_properties(${objects} PROPERTIES CXX_EXTENSIONS OFF)
    add_dependencies(all_internal_headers ${objects})
  endif()
  target_sources(${objects} PRIVATE ${source})
endfunction()

# noonleaf_sources(TARGET FOLDER noonleaf/<domain> PUBLIC_HEADERS … INTERNAL_HEADERS … SOURCES …)
# The files of one domain, each by name. Public headers are installed and checked to compile alone by
# CMake (all_verify_interface_header_sets); internal ones by a generated source (all_internal_headers).
function(noonleaf_sources target)
  cmake_parse_arguments(arg "" "FOLDER" "PUBLIC_HEADERS;INTERNAL_HEADERS;SOURCES" ${ARGN})
  set(lib "${PROJECT_SOURCE_DIR}/lib")
  list(TRANSFORM arg_PUBLIC_HEADERS PREPEND "${lib}/${arg_FOLDER}/")
  list(TRANSFORM arg_SOURCES PREPEND "${lib}/${arg_FOLDER}/")
  foreach(header IN LISTS arg_PUBLIC_HEADERS)
    file(STRINGS "${header}" visible REGEX [[^inline namespace .*visibility\("default"\)]])
    if(NOT visible AND header MATCHES "hpp$")
      message(SEND_ERROR "${header} is public: it needs `inline namespace [[gnu::visibility(\"default\")]] v1 {`, "
                         "or its functions cannot be linked from a shared library.")
    endif()
  endforeach()
  target_sources(${target} PRIVATE ${arg_SOURCES})
  target_sources(${target} PUBLIC FILE_SET HEADERS BASE_DIRS "${lib}" FILES ${arg_PUBLIC_HEADERS})
  if(NOT PROJECT_IS_TOP_LEVEL)
    return()
  endif()
  foreach(header IN LISTS arg_INTERNAL_HEADERS)
    string(MAKE_C_IDENTIFIER "${arg_FOLDER}/${header}" name)
    set(alone "${PROJECT_BINARY_DIR}/internal_headers/${name}.cpp")
    file(CONFIGURE OUTPUT "${alone}" CONTENT "#include \"${arg_FOLDER}/${header}\"\n")
    noonleaf_compile_alone(${target} "${alone}")
  endforeach()
endfunction()

# Whether the compiler can build a function several times over and let the loader pick (GCC on x86-64 can, Clang 14
# cannot for these architectures). Without it the kernels are built once, for the processor the compiler is told of.
include(CheckCXXSourceCompiles)
if(NOONLEAF_DISPATCH)
  set(CMAKE_REQUIRED_FLAGS "-Werror")
  check_cxx_source_compiles("
    [[gnu::target(\"default\")]] int lanes() { return 2; }
    [[gnu::target(\"arch=x86-64-v3\")]] int lanes() { return 4; }
    [[gnu::target(\"arch=x86-64-v4\")]] int lanes() { return 8; }
    [[gnu::target_clones(\"arch=x86-64-v4\", \"arch=x86-64-v3\", \"default\")]] int twice(int x) { return 2 * x; }
    int main() { return lanes() + twice(1); }" NOONLEAF_CAN_DISPATCH)
  unset(CMAKE_REQUIRED_FLAGS)
endif()

# noonleaf_kernels(TARGET FOLDER noonleaf/<domain> KERNELS file.cpp… [WITH_DISPATCH file.cpp…])
# KERNELS hold the loops of the batch doors: optimised whatever the build type, since at -O2 or with errno and traps
# kept the compiler leaves them scalar. Neither flag changes what NaN does. WITH_DISPATCH files only need to know.
function(noonleaf_kernels target)
  cmake_parse_arguments(arg "" "FOLDER" "KERNELS;WITH_DISPATCH" ${ARGN})
  list(TRANSFORM arg_KERNELS PREPEND "${PROJECT_SOURCE_DIR}/lib/${arg_FOLDER}/")
  list(TRANSFORM arg_WITH_DISPATCH PREPEND "${PROJECT_SOURCE_DIR}/lib/${arg_FOLDER}/")
  set_property(SOURCE ${arg_KERNELS} TARGET_DIRECTORY ${target} APPEND PROPERTY
               COMPILE_OPTIONS -O3 -fno-math-errno -fno-trapping-math)
  if(NOONLEAF_CAN_DISPATCH)
    set_property(SOURCE ${arg_KERNELS} ${arg_WITH_DISPATCH} TARGET_DIRECTORY ${target} APPEND PROPERTY
                 COMPILE_DEFINITIONS NOONLEAF_DISPATCH)
  endif()
endfunction()
