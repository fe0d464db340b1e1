import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/page-model";
import styles from "./back-link.module.css";

/** The way back above a page's title. */
export function BackLink({ link }: { readonly link: LinkModel }) {
  return (
    <Link prefetch={false} className={styles.back} href={link.href}>
      {link.label}
    </Link>
  );
}
