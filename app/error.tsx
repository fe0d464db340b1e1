"use client";

import { Failure } from "./_ui/refusal/failure";

export default function ErrorPage({ error, reset }: { readonly error: Error & { digest?: string }; reset(): void }) {
  return <Failure reference={error.digest ?? ""} onAgain={reset} />;
}
