import styles from "./chart-marks.module.css";

/** The hatchings of one drawing, told apart by direction so that they print in one colour. */
export function Hatches({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}-toward`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className={`${styles.toward} ${styles.hatch}`} d="M0 0V7" />
      </pattern>
      <pattern id={`${id}-away`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path className={`${styles.away} ${styles.hatch}`} d="M0 0V7" />
      </pattern>
      <pattern id={`${id}-neither`} width="7" height="7" patternUnits="userSpaceOnUse">
        <path className={`${styles.neither} ${styles.hatch}`} d="M0 0V7" />
      </pattern>
      <pattern id={`${id}-open`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className={styles.openHatch} d="M0 0V6" />
      </pattern>
    </defs>
  );
}
