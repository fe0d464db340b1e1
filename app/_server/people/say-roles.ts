import type { Role } from "@/lib/domain/person";
import type { Words } from "@/lib/words/catalogue";

/** Somebody's roles in one line. */
export function sayRoles(words: Words, roles: readonly Role[]): string {
  return roles.length === 0
    ? words.say("people.role.none")
    : roles.map((role) => words.say(`people.role.${role}`)).join(", ");
}
