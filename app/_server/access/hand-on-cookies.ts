import { parseSetCookieHeader, toCookieOptions } from "better-auth/cookies";
import { cookies } from "next/headers";

/** Gives the browser the cookies that the log-in library made where an action, and no answer of ours, is sent. */
export async function handOnCookies(made: Headers): Promise<void> {
  const jar = await cookies();
  for (const line of made.getSetCookie())
    for (const [name, attributes] of parseSetCookieHeader(line))
      jar.set(name, attributes.value, toCookieOptions(attributes));
}
