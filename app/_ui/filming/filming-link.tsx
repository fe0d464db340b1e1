import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/basic-model";
import styles from "./filming-link.module.css";

/** The way to the card, above a page whose own words can't hold it. */
export function FilmingLink({ link }: { readonly link: LinkModel }) {
  return (
    <p className={styles.way}>
      <Link prefetch={false} href={link.href}>
        {link.label}
      </Link>
    </p>
  );
}
