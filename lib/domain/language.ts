/** Languages in which a family can be told what was measured. */
export const LANGUAGES = ["en", "de"] as const;

/** A language in which a family can be told. */
export type Language = (typeof LANGUAGES)[number];
