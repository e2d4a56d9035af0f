/** The worker's own file for what-if questions: questions in, news out; null stops what is being worked. */
import "../engine/all-functions.ts";
import type { AnswerNews, Question } from "../engine/question.ts";
import { Answerer } from "./question.ts";

const answerer = new Answerer(
  (id: number, news: AnswerNews) => self.postMessage({ id, news }),
  // A turn of the worker's loop, in which waiting messages come in.
  () => new Promise((resolve) => setTimeout(resolve, 0)),
);

self.onmessage = ({ data }: MessageEvent<{ id: number; question: Question } | null>) => {
  if (data) answerer.ask(data.id, data.question);
  else answerer.stop();
};
