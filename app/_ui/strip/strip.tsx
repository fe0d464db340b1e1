import { type DrawnStrip, EMPTY_STRIP, pathsOf, STRIP_HEIGHT, type StripWidth, WIDTH } from "./draw-strip";
import styles from "./strip.module.css";

function Paths({ drawn }: { readonly drawn: DrawnStrip }) {
  return pathsOf(drawn).map(([style, d]) => <path key={style} className={styles[style]} d={d} />);
}

/** A track as high as a line of text. */
export function Strip({
  drawn,
  label,
  width = WIDTH,
}: {
  readonly drawn: DrawnStrip;
  /** What it shows, in words. */
  readonly label: string;
  /** As it was drawn. */
  readonly width?: StripWidth;
}) {
  return (
    <svg
      className={styles.strip}
      width={width}
      height={STRIP_HEIGHT}
      viewBox={`0 0 ${width} ${STRIP_HEIGHT}`}
      role="img"
      aria-label={label}
    >
      <Paths drawn={drawn} />
    </svg>
  );
}

/** The band of a row where nothing is measured; what it means is said beside it. */
export function EmptyStrip() {
  return (
    <svg
      className={styles.strip}
      width={WIDTH}
      height={STRIP_HEIGHT}
      viewBox={`0 0 ${WIDTH} ${STRIP_HEIGHT}`}
      aria-hidden="true"
    >
      <Paths drawn={EMPTY_STRIP} />
    </svg>
  );
}
