import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/page-model";
import styles from "./choices.module.css";

/** Ways to show the same page, the one in force marked: clubs, orders, pages of a list. */
export function Choices(props: {
  readonly label: string;
  readonly links: readonly (LinkModel & { readonly current: "yes" | "no" })[];
}) {
  return (
    <nav aria-label={props.label} className={styles.choices}>
      {props.links.map((link) => (
        <Link
          prefetch={false}
          key={link.href}
          href={link.href}
          aria-current={link.current === "yes" ? "page" : undefined}
        >
          {link.label}
        </Link>
      ))}
    </nav>
  );
}
