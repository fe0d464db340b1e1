/** A form that defines a fundamental of an academy's own, as a browser sends it. Errors and sensitivities: common practice, no source. */
export const OWN_HEEL_FORM = {
  ...{ name: "Heel lift", how: "Heel of the lead shoe above its sole.", plus: "heel higher" },
  ...{ unit: "pct-stance", view: "face-on", checkpoint: "top", mirrors: "same", after: "top-tilt" },
  ...{ reading: "3", like: "own", camera: "2.5", yaw: "0.1", roll: "0.1", offset: "" },
  ...{ low: "0", high: "15", least: "-5", most: "60", worthwhile: "" },
};
