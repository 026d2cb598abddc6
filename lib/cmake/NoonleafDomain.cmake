# noonleaf_library(TARGET COMPONENT [PUBLIC lib…] [PRIVATE lib…])
# One of the three libraries, with what every one of them needs.
function(noonleaf_library target component)
  cmake_parse_arguments(arg "" "" "PUBLIC;PRIVATE" ${ARGN})
  add_library(${target})
  add_library(noonleaf::${component} ALIAS ${target})
  if(NOT TARGET noonleaf::noonleaf)
    add_library(noonleaf::noonleaf ALIAS ${target})
  endif()
  target_compile_features(${target} PUBLIC cxx_std_20)
  set_target_properties(${target} PROPERTIES CXX_EXTENSIONS OFF POSITION_INDEPENDENT_CODE ON
                        VERSION ${PROJECT_VERSION} SOVERSION ${PROJECT_VERSION_MAJOR})
  target_link_libraries(${target} PUBLIC ${arg_PUBLIC}
                        PRIVATE ${arg_PRIVATE} $<BUILD_INTERFACE:noonleaf_warnings>)
  target_include_directories(${target} PRIVATE ${PROJECT_SOURCE_DIR}/lib)
endfunction()

# noonleaf_sources(TARGET FOLDER noonleaf/<domain> PUBLIC_HEADERS … INTERNAL_HEADERS … SOURCES …)
# The files of one domain, each by name. Public headers are installed and checked to compile alone by
# CMake (all_verify_interface_header_sets); internal ones are checked by a generated source.
function(noonleaf_sources target)
  cmake_parse_arguments(arg "" "FOLDER" "PUBLIC_HEADERS;INTERNAL_HEADERS;SOURCES" ${ARGN})
  set(lib "${PROJECT_SOURCE_DIR}/lib")
  list(TRANSFORM arg_PUBLIC_HEADERS PREPEND "${lib}/${arg_FOLDER}/")
  list(TRANSFORM arg_SOURCES PREPEND "${lib}/${arg_FOLDER}/")
  target_sources(${target} PRIVATE ${arg_SOURCES})
  target_sources(${target} PUBLIC FILE_SET HEADERS BASE_DIRS "${lib}" FILES ${arg_PUBLIC_HEADERS})
  foreach(header IN LISTS arg_INTERNAL_HEADERS)
    string(MAKE_C_IDENTIFIER "${arg_FOLDER}/${header}" name)
    set(alone "${CMAKE_BINARY_DIR}/internal_headers/${name}.cpp")
    file(CONFIGURE OUTPUT "${alone}" CONTENT "#include \"${arg_FOLDER}/${header}\"\n")
    target_sources(${target} PRIVATE "${alone}")
  endforeach()
endfunction()
