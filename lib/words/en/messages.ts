import figure from "./figure.json";
import problem from "./problem.json";
import shell from "./shell.json";

export const ENGLISH = { figure, problem, shell };
