import type { TaggedNote } from "./contact-notes";

/**
 * Hard notes written in one go before the coder's rules were read again or run on them (the word list of
 * lib/domain/contact-word.ts had been seen); all invented.
 *
 * Every fourth, from the first on, was set down beforehand for development; the others are kept apart, and no rule is mended from them.
 */
const WRITTEN: readonly TaggedNote[] = [
  ["first two thin, the rest pure", 6, "low=2 good=~"],
  ["no more than 2 fat", null, "ground=~"],
  ["none of them shanked", null, "heel=0"],
  ["not one shank in 20", 20, "heel=0/20"],
  ["2-3 thin", null, "low=~"],
  ["thin thin thin pure", null, "low=~ low=~ low=~ good=~"],
  ["Six solid out of ten, two fat", null, "good=6/10 ground=2"],
  ["7/10 flush, other 3 heely", null, "good=7/10 heel=3"],
  ["1st thin, 2nd thin, 3rd pure", null, "low=~ low=~ good=~"],
  ["caught two a bit heavy", null, "ground=2"],
  ["without a single chunk", null, "ground=0"],
  ["hardly any fat ones", null, "ground=~"],
  ["he felt heavy in the legs but struck it clean", null, "good=~"],
  ["solid base, solid turn, ball thin", null, "low=~"],
  ["used to shank every third, now flush", null, "good=~"],
  ["in May she topped half; today none topped", null, "low=0"],
  ["5 iron thin, 7 iron fat", null, "low=~ ground=~"],
  ["10 balls: 4 pure, 3 thin, 3 fat", null, "good=4 low=3 ground=3"],
  ["slice, slice, hook, one off the toe", null, "toe=1"],
  ["drew two, faded three, all middled", 5, "good=5/5"],
  ["all but one solid", 5, "good=4/5"],
  ["top of the backswing better; thinned 1", null, "low=1"],
  ["wears thin gloves, hands cold", null, ""],
  ["heel of the hand pressed too much", null, ""],
  ["on the toes, then fat x2", null, "ground=2"],
  ["didn't top any today", null, "low=0"],
  ["topped 0", null, "low=0"],
  ["one fat one, one thin one, one in the middle of the face", null, "ground=1 low=1 good=1"],
  ["ball 3 was fat", null, "ground=~"],
  ["3x fat", null, "ground=3"],
  ["FAT!!! again", null, "ground=~"],
  ["2 fat (wet lie)", null, "ground=2"],
  ["hit behind it 3 times", null, "ground=3"],
  ["thinnish contact", null, "low=~"],
  ["5 clean strikes of 8", null, "good=5/8"],
  ["8 hit, 5 clean", null, "good=5"],
  ["every ball on the heel", 6, "heel=6/6"],
  ["either thin or fat", null, "low=~ ground=~"],
  ["more toe than heel", null, "toe=~ heel=~"],
  ["neither fat nor thin", null, "ground=0 low=0"],
  ["less fat than last week", null, "ground=~"],
  ["one shank; otherwise clean", null, "heel=1 good=~"],
  ["no thin ones but three heavy ones", null, "low=0 ground=3"],
  ["dad says he topped it yesterday", null, ""],
  ["push, push, push. Contact solid", null, "good=~"],
  ["wanted to feel heavy arms", null, ""],
  ["a dozen balls, two off the hosel", null, "heel=2"],
  ["twice fat, once thin", null, "ground=2 low=1"],
  ["driver skied twice, 3 wood pure", null, "high=2 good=~"],
  ["never a clean one all day", null, "good=0"],
  ["ten balls, not a single fat one, 2 toey", 10, "ground=0 toe=2"],
  ["shanked his first, then five pured in a row", null, "heel=~ good=5"],
  ["heels down at setup; strike a touch low on the face", null, "low=~"],
];

const forDevelopment = (_note: TaggedNote, place: number) => place % 4 === 0;

/** The quarter of the fresh notes that rules may be mended from. */
export const FRESH_DEVELOPED: readonly TaggedNote[] = WRITTEN.filter(forDevelopment);

/** The fresh notes that are kept apart. */
export const FRESH_HELD_BACK: readonly TaggedNote[] = WRITTEN.filter((note, place) => !forDevelopment(note, place));
