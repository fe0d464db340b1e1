// The plan of the next film rests on it too, so it is decided among the verdicts.
export { type OfferedPlan, offeredPlan as planOnOffer } from "@/lib/verdict/offered-plan";
