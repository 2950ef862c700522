import assert from "node:assert/strict";
import { mock, test } from "node:test";
import { throttled } from "../src/throttle.ts";

test("of many calls the first and the newest are made, a period apart", (context) => {
  mock.timers.enable({ apis: ["setTimeout"] });
  context.after(() => mock.timers.reset());
  const said: string[] = [];
  const say = throttled((text: string) => said.push(text), 1000);
  say("first");
  mock.timers.tick(1);
  for (const text of ["second", "third", "newest"]) say(text);
  mock.timers.tick(500);
  assert.deepEqual(said, ["first"]);
  mock.timers.tick(501);
  assert.deepEqual(said, ["first", "newest"]);
});
