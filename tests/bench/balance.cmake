noonleaf_bench(balance LIBRARIES noonleaf::noonleaf SOURCES balance_bench.cpp balance_plain.cpp ratios.cpp)
set_property(SOURCE balance_plain.cpp APPEND PROPERTY COMPILE_OPTIONS -O3 -fno-math-errno -fno-trapping-math)
