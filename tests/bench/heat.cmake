noonleaf_bench(heat LIBRARIES noonleaf::noonleaf SOURCES heat_bench.cpp heat_plain.cpp ratios.cpp)
set_property(SOURCE heat_plain.cpp APPEND PROPERTY COMPILE_OPTIONS -O3 -fno-math-errno -fno-trapping-math)
