/** How the framework marks a way on that is thrown; ours to the sign-in is told by its path. */
const TO_SIGN_IN = /^NEXT_REDIRECT;[^;]*;\/sign-in(?:[?;]|$)/;

/**
 * Answers a page that asks by itself while somebody types. Whoever was signed out meanwhile learns it from the keeping of the
 * form; led away to the sign-in they would lose what they typed last.
 *
 * @param otherwise what is answered to them
 */
export async function whileSignedIn<T>(otherwise: T, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const digest = String((error as { readonly digest?: unknown } | null)?.digest ?? "");
    if (TO_SIGN_IN.test(digest)) return otherwise;
    throw error;
  }
}
