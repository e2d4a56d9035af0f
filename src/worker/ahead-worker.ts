/** The worker's own file for working ahead of a what-if question: orders in, worked settings out. */
import "./alive.ts";
import "../engine/all-functions.ts";
import { type AheadNews, type AheadOrder, Helper } from "./ahead.ts";
import { turn } from "./turn.ts";

const helper = new Helper((news: AheadNews) => self.postMessage(news), turn);

self.onmessage = ({ data }: MessageEvent<AheadOrder>) => {
  helper.take(data);
};
