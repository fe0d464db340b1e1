/** Where somebody logs in, and comes back to where they were. */
export function signInPage(path: string | null): string {
  return path === null ? "/sign-in" : `/sign-in?to=${encodeURIComponent(path)}`;
}
