/** The worker's own file: one task in, news out. An error is left to the browser to tell the client. */
import { type SearchNews, type SearchTask, workTask } from "./protocol.ts";

self.onmessage = ({ data }: MessageEvent<SearchTask>) => {
  workTask(data, (news: SearchNews) => self.postMessage(news));
};
