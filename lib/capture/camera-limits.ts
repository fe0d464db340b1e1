/** Every number by which a camera record is turned into doubt. Common practice, no source, unless said otherwise. */

/** Sds of a placement that nobody looked at, degrees: yaw; roll; angle of 15 cm beside the line at 4 m; pitch (own choice). */
export const UNKNOWN_YAW_SD = 4;
export const UNKNOWN_ROLL_SD = 1;
export const UNKNOWN_OFFSET_SD = 2.1;
export const UNKNOWN_PITCH_SD = 3;

/** Sd of a place that was looked at with a stick that points at the phone, or measured, degrees: what was seen has the word. Own choice. */
export const LOOKED_AT_YAW_SD = 20;

/** Sds of what is left after a check against sticks and a plumb line, degrees: yaw; roll; angle of 4 cm at 4 m. */
export const CHECKED_YAW_SD = 1;
export const CHECKED_ROLL_SD = 0.5;
export const CHECKED_OFFSET_SD = 0.6;

/** Sds of one look at a picture, degrees: the stick that points at the phone; the stick across; something upright. */
export const POINTING_STICK_SD = 2;
export const ACROSS_STICK_SD = 1;
export const PLUMB_SD = 0.5;

/** Sds of what is measured on the ground: a paced distance as a share of it; heights and a way beside a line in cm. */
export const PACED_SHARE_SD = 0.15;
export const MEASURED_HEIGHT_SD_CM = 5;
export const MEASURED_BESIDE_SD_CM = 5;

/** Distance from the student at which a sideways offset down the line is turned into an angle, cm. */
export const OFFSET_DISTANCE_CM = 400;

/** What is believed of lengths that nobody measured, cm: own choice about the usual advice (3 to 6 m, hand height). */
export const USUAL_DISTANCE_CM = { "face-on": 350, "down-the-line": OFFSET_DISTANCE_CM } as const;
export const USUAL_DISTANCE_SHARE_SD = 0.3;
export const USUAL_LENS_CM = { value: 100, sd: 20 } as const;
export const USUAL_HANDS_CM = { value: 75, sd: 10 } as const;

/** Width of a stance that nobody measured, cm. */
export const USUAL_STANCE_CM = 45;

/** Sensitivity from which on a fundamental counts as moved by that kind of misplacement. */
export const HIGH_SENSITIVITY = 0.5;

/** Yaw that a film bears without more doubt, degrees. */
export const YAW_ACCEPT = 3;

/** Yaw beyond which a fundamental of high yaw sensitivity is set aside, degrees. */
export const YAW_REJECT_HIGH = 10;

/** Yaw beyond which any face-on fundamental is set aside, degrees. */
export const YAW_REJECT_ANY = 15;

/** Sideways offset beyond which a fundamental of high offset sensitivity is set aside, cm. */
export const OFFSET_REJECT_CM = 35;

/** Sideways offset beyond which a line is read against a stick in the same picture or not at all, cm. */
export const LINE_NEEDS_STICK_CM = 10;

/** Roll beyond which leans are set aside where nobody measured it, degrees: the guess of a roll isn't taken out. */
export const ROLL_REJECT = 5;

/** Pitch beyond which angles out of the picture's plane are set aside, degrees; from the other on they are widened by a share a degree. */
export const PITCH_REJECT_ANGLE = 10;
export const PITCH_ACCEPT = 5;
export const PITCH_ANGLE_PER_DEGREE = 0.3;

/** Nearer than this nothing is read; nearer than the other, ways sideways are doubted by the share that hips behind the feet lose, cm. */
export const DISTANCE_REJECT_CM = 200;
export const DISTANCE_ACCEPT_CM = 300;
export const HIPS_BEHIND_FEET_CM = 15;
