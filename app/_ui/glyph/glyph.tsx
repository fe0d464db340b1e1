import type { Glyph as GlyphName } from "@/lib/report/page-model";
import styles from "./glyph.module.css";

const SHAPES: Readonly<Record<GlyphName, { readonly line: string; readonly wedge: string }>> = {
  gain: { line: "M1 2.5H17", wedge: "M1 17L17 4.5V13.5Z" },
  slip: { line: "M1 2.5H17", wedge: "M1 4.5L17 8V17Z" },
  moved: { line: "", wedge: "M1 9L17 4.5V13.5Z" },
  steady: { line: "M2 9H16M2 4.5V13.5M16 4.5V13.5", wedge: "" },
  open: { line: "M6 3H2V15H6M12 3H16V15H12", wedge: "" },
};

/** The marks of a verdict's shape, 18 by 18. */
export function GlyphShape({ glyph }: { readonly glyph: GlyphName }) {
  const { line, wedge } = SHAPES[glyph];
  return (
    <>
      {line === "" ? null : <path className={styles.line} d={line} />}
      {wedge === "" ? null : <path className={styles[glyph]} d={wedge} />}
    </>
  );
}

/** A verdict's shape; the word beside it says the same, so it is silent. */
export function Glyph({ glyph, size }: { readonly glyph: GlyphName; readonly size?: 16 | 18 | 20 }) {
  const pixels = size ?? 18;
  return (
    <svg className={styles.glyph} width={pixels} height={pixels} viewBox="0 0 18 18" aria-hidden="true">
      <GlyphShape glyph={glyph} />
    </svg>
  );
}

/** A verdict's shape with its word. */
export function Verdict({
  glyph,
  word,
  size,
}: {
  readonly glyph: GlyphName;
  readonly word: string;
  readonly size?: 16 | 18 | 20;
}) {
  return (
    <span className={styles.verdict}>
      <Glyph glyph={glyph} size={size} />
      {word}
    </span>
  );
}
