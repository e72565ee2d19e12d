# Searches by a second, dumber method for something better than what the program finds.
if(TARGET base)
  add_executable(search_straightedge ${CMAKE_CURRENT_LIST_DIR}/straightedge_search.cpp)
  target_link_libraries(search_straightedge PRIVATE base squaredig_warnings)
  add_test(NAME search.straightedge COMMAND search_straightedge 200)
endif()
