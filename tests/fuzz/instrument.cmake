# Everything that is built from here on, libraries and fuzzers, with coverage counters and sanitizers:
# -DNOONLEAF_FUZZ=ON.
if(NOT CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
  message(FATAL_ERROR "NOONLEAF_FUZZ needs clang: -DCMAKE_CXX_COMPILER=clang++")
endif()
if(NOONLEAF_DISPATCH)
  message(FATAL_ERROR "NOONLEAF_FUZZ needs -DNOONLEAF_DISPATCH=OFF: "
                      "the loader picks functions before the sanitizers are ready.")
endif()
set(fuzz_checks -fsanitize=address,undefined -fno-sanitize-recover=all)
# -O1: enough for a thousand inputs a second and more, and quick to compile; lines for the reports, no variables.
add_compile_options(-O1 -gline-tables-only ${fuzz_checks} -fsanitize=fuzzer-no-link)
add_link_options(${fuzz_checks})
