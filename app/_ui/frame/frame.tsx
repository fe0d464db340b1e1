import Link from "next/link";
import type { ReactNode } from "react";
import type { FrameModel } from "@/lib/report/page-model";
import styles from "./frame.module.css";

/** The band's edge and the wedge that leans into it. */
function Mark() {
  return (
    <svg width="22" height="18" viewBox="0 0 22 18" aria-hidden="true">
      <path className={styles.band} d="M0 1H22V6H0Z" />
      <path className={styles.edge} d="M0 1H22M0 6H22" />
      <path className={styles.wedge} d="M1 17L21 5V14Z" />
    </svg>
  );
}

/** What stands around every page: whose evidence it is, where one can go, and on the demo that it is one. */
export function Frame({
  model,
  current,
  children,
}: {
  readonly model: FrameModel;
  readonly current: string;
  readonly children: ReactNode;
}) {
  return (
    <div className={styles.frame}>
      <a className={styles.skip} href="#page">
        {model.skip}
      </a>
      <header className={styles.header}>
        <Link prefetch={false} href="/students" className={styles.product}>
          <Mark />
          {model.product}
        </Link>
        <nav aria-label={model.product}>
          <ul className={styles.navigation}>
            {model.navigation.map((link) => (
              <li key={link.id}>
                <Link prefetch={false} href={link.href} aria-current={link.id === current ? "page" : undefined}>
                  {link.label}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
        <p className={styles.about}>
          {model.asOf} · {model.viewer}
        </p>
      </header>
      {model.demo === null ? null : (
        <aside className={styles.demo} aria-label={model.academyName}>
          <p>
            {model.demo.line} {model.demo.about}
          </p>
          <Link prefetch={false} href={model.demo.start.href}>
            {model.demo.start.label}
          </Link>
        </aside>
      )}
      {model.notice === "" ? null : (
        <p className={styles.notice} role="status">
          {model.notice}
        </p>
      )}
      <main id="page" tabIndex={-1}>
        {children}
      </main>
      <footer className={styles.foot}>
        {model.foot.map((link) => (
          <Link key={link.href} prefetch={false} href={link.href}>
            {link.label}
          </Link>
        ))}
      </footer>
    </div>
  );
}
