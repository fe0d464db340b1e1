import type { Role } from "@/lib/domain/person";

/** All of an academy's work with students. */
export const TEACH = ["director", "coach"] as const satisfies readonly Role[];
/** Getting values in. */
export const ENTER = ["director", "coach", "assistant"] as const satisfies readonly Role[];
/** What holds for everybody of an academy: its people, its rules. */
export const RUN = ["owner", "director"] as const satisfies readonly Role[];
/** All students of an academy, and who has whom in charge. */
export const DIRECT = ["director"] as const satisfies readonly Role[];
/** The installation itself. */
export const OWN = ["owner"] as const satisfies readonly Role[];

/** No log-in is asked for, and nothing of anybody is answered. */
export const anyone = () => ({ of: "nobody" }) as const;
/** Whoever is logged in, about themselves. */
export const viewer = () => ({ of: "viewer" }) as const;
/** About an academy; what is listed of students is cut to those whom the viewer may see. */
export const academy = <const R extends readonly Role[]>(roles: R) => ({ of: "academy", roles }) as const;
/** About one student: one of the academy for a director, one in their charge for a coach or whoever assists one. */
export const student = <const R extends readonly Role[]>(roles: R) => ({ of: "student", roles }) as const;
/** A program that shows a key. */
export const key = () => ({ of: "key" }) as const;
/** A family by its link: one student. */
export const link = () => ({ of: "link" }) as const;
