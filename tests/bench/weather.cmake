find_package(date REQUIRED)
noonleaf_bench(weather LIBRARIES noonleaf::readers date::date SOURCES weather_bench.cpp weather_plain.cpp ratios.cpp)
