/** The worker's own file for tables of other programs. */
import "./alive.ts";
import "../engine/all-functions.ts";
import { answerInTurn } from "./answer-in-turn.ts";
import { type TableAnswer, type TableOrder, TableReading } from "./table.ts";

const reading = new TableReading();
answerInTurn<TableOrder, TableAnswer>((order) => reading.answer(order));
