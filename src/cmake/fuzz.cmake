# cmake -C src/cmake/fuzz.cmake -B build-fuzz: the readers' fuzzers, by clang's libFuzzer with ASan and UBSan.
set(CMAKE_CXX_COMPILER clang++-14 CACHE STRING "")
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -O1 -g1" CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "" CACHE STRING "")
set(SQUAREDIG_FUZZ ON CACHE BOOL "")
