import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/basic-model";
import styles from "./ways.module.css";

/** Ways on from the head of a page, beside each other. */
export function Ways({ links }: { readonly links: readonly LinkModel[] }) {
  return (
    <p className={styles.ways}>
      {links.map(({ href, label }) => (
        <Link key={href} prefetch={false} href={href} className={styles.way}>
          {label}
        </Link>
      ))}
    </p>
  );
}
