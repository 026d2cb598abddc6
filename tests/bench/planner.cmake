noonleaf_bench(planner LIBRARIES noonleaf::readers SOURCES planner_bench.cpp invented_folder.cpp ratios.cpp)
