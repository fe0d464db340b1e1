import type { Role } from "@/lib/domain/person";
import type { AcademyChoice } from "../database";
import type { LogIn } from "./log-in";

/** Whether people can reach this server from elsewhere: somebody has stated the address under which they do. */
export function hasPublicAddress(): boolean {
  return Boolean(process.env.PROOFBAND_ORIGIN);
}

/** Roles that reach whole academies, and so show a second proof. */
const WITH_SECOND_STEP = ["owner", "director"] as const;

/** Who is asked for it. */
interface Asked {
  readonly choice: AcademyChoice;
  readonly roles: readonly Role[];
}

/** Whether a viewer's role asks for a second proof besides the password. */
export function needsSecondStep({ roles }: Asked): boolean {
  return WITH_SECOND_STEP.some((role) => roles.includes(role));
}

/**
 * Whether a viewer must add the second proof before anything else. As long as nobody can reach this server from elsewhere it is
 * asked for and may wait: whoever sits at this machine has the data folder anyway.
 */
export function mustAddSecondStep(viewer: Asked, logIn: LogIn): boolean {
  return viewer.choice === "own" && hasPublicAddress() && !logIn.hasSecondStep && needsSecondStep(viewer);
}
