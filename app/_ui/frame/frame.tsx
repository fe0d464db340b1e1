import Link from "next/link";
import type { ReactNode } from "react";
import type { FrameModel } from "@/lib/report/page-model";
import styles from "./frame.module.css";
import { LogInEnd } from "./log-in-end";
import { Mark } from "./mark";

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
        <Link prefetch={false} href={model.home} className={styles.product}>
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
        <div className={styles.about}>
          <span>
            {model.asOf} ·{" "}
            <Link prefetch={false} href={model.account} aria-current={current === "account" ? "page" : undefined}>
              {model.viewer}
            </Link>
          </span>
          <form action="/api/sign-out" method="post">
            <button type="submit" className="say">
              {model.signOut}
            </button>
          </form>
        </div>
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
      {model.logIn ? <LogInEnd model={model.logIn} /> : null}
    </div>
  );
}
