import type { Messages } from "@/lib/words/reader";
import figure from "./figure.json";
import problem from "./problem.json";
import shell from "./shell.json";

export const GERMAN: Messages = { figure, problem, shell };
