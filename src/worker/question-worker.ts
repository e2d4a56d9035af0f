/** The worker's own file for what-if questions: questions in, news out; null stops what is being worked. */
import "./alive.ts";
import "../engine/all-functions.ts";
import type { AnswerNews, Question } from "../engine/question.ts";
import { Helpers } from "./ahead-client.ts";
import { Answerer } from "./question.ts";
import { turn } from "./turn.ts";

const answerer = new Answerer(
  (id: number, news: AnswerNews) => self.postMessage({ id, news }),
  turn,
  new Helpers().begin,
);

self.onmessage = ({ data }: MessageEvent<{ id: number; question: Question } | null>) => {
  if (data) answerer.ask(data.id, data.question);
  else answerer.stop();
};
