import styles from "./frame.module.css";

/** The band's edge and the wedge that leans into it. */
export function Mark() {
  return (
    <svg width="22" height="18" viewBox="0 0 22 18" aria-hidden="true">
      <path className={styles.band} d="M0 1H22V6H0Z" />
      <path className={styles.edge} d="M0 1H22M0 6H22" />
      <path className={styles.wedge} d="M1 17L21 5V14Z" />
    </svg>
  );
}
