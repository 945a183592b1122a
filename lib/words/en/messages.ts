import figure from "./figure.json";

export const ENGLISH = { figure };
