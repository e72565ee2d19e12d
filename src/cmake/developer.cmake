# cmake -C src/cmake/developer.cmake -B build: warnings are errors.
set(SQUAREDIG_DEVELOPER ON CACHE BOOL "")
