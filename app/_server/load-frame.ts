import { buildFrame } from "@/lib/report/build-frame";
import type { FrameModel } from "@/lib/report/page-model";
import { opensPage } from "./access/find-row";
import { secondsLeft } from "./access/log-in-left";
import { isBehind, isJudging } from "./analysis/judging";
import { firstPage, type Viewer } from "./gate";
import { demoTries } from "./settings/demo-tries";

/** What stands around every page of this viewer. */
export function loadFrame(viewer: Viewer): FrameModel {
  return buildFrame(viewer.words, {
    academyName: viewer.academy.name,
    viewer: viewer.name,
    today: viewer.today,
    kind: viewer.academy.kind,
    home: firstPage(viewer),
    opens: (page) => opensPage(page, viewer.roles),
    ...(isBehind(viewer.scope.academyId) ? { notice: viewer.words.say("not-saved.judging") } : {}),
    ...(isJudging(viewer.scope.academyId) ? { notice: viewer.words.say("running.judging-notice") } : {}),
    ...(viewer.logInEnds ? { left: secondsLeft(viewer.logInEnds) } : {}),
    tries: viewer.academy.kind === "demo" ? demoTries() : null,
  });
}
