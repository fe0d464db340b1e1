/** Under whose name the program keeps what it has done, or has still to do; nobody's id is like it. */
export const PROGRAM = "the program";
