import "@fontsource/atkinson-hyperlegible-next/400.css";
import "@fontsource/atkinson-hyperlegible-next/600.css";
import "./_ui/tokens.css";
import "./_ui/base.css";
import type { Metadata, Viewport } from "next";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { requireWords } from "./_server/gate";
import { FailureWords } from "./_ui/refusal/failure-words";

export const viewport: Viewport = { width: "device-width", initialScale: 1, colorScheme: "light dark" };

export async function generateMetadata(): Promise<Metadata> {
  const words = await requireWords();
  return { title: words.say("frame.product"), robots: { index: false, follow: false } };
}

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  // A page made at build time would carry no nonce, and its scripts would be blocked.
  await connection();
  const words = await requireWords();
  const failure = {
    title: words.say("failure.title"),
    happened: words.say("failure.happened"),
    reference: words.say("failure.reference"),
    again: words.say("failure.again"),
  };
  return (
    <html lang={words.locale}>
      <body>
        <FailureWords words={failure}>{children}</FailureWords>
      </body>
    </html>
  );
}
