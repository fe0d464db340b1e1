import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/basic-model";
import styles from "./link-row.module.css";

/** Where a part leads on, side by side; nothing where it leads nowhere. */
export function LinkRow({ links }: { readonly links: readonly LinkModel[] }) {
  if (links.length === 0) return null;
  return (
    <p className={styles.row}>
      {links.map(({ href, label }) =>
        // A download is no page: nothing is to be fetched before.
        href.startsWith("/api/") ? (
          <a key={href} href={href}>
            {label}
          </a>
        ) : (
          <Link key={href} prefetch={false} href={href}>
            {label}
          </Link>
        ),
      )}
    </p>
  );
}
