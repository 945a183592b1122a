import type { Messages } from "@/lib/words/reader";
import figure from "./figure.json";

export const GERMAN: Messages = { figure };
