/** Stored with every advice: raised whenever a model or a judgement changes a computed number. */
export const MODEL_VERSION = "2026.11.4";
