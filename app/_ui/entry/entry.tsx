import type { ReactNode } from "react";
import { Mark } from "../frame/mark";
import styles from "./entry.module.css";

/** What stands around a page for somebody who isn't logged in: only whose house it is. */
export function Entry({ product, children }: { readonly product: string; readonly children: ReactNode }) {
  return (
    <div className={styles.entry}>
      <header className={styles.header}>
        <p className={styles.product}>
          <Mark />
          {product}
        </p>
      </header>
      <main id="page" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
