#include "app/program.h"

int main(int count, char** words) {
  return squaredig::app::run_program({words + 1, words + count});
}
