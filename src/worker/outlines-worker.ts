/** The worker's own file for drawings of other programs. */
import "./alive.ts";
import { answerInTurn } from "./answer-in-turn.ts";
import { type OutlinesAnswer, type OutlinesOrder, OutlinesReading } from "./outlines.ts";

const reading = new OutlinesReading();
answerInTurn<OutlinesOrder, OutlinesAnswer>((order) => reading.answer(order));
