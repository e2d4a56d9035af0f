/** A helper's side of working ahead: settings of a question are worked a few at a time, and a newer task ends the older one. */
import { AheadEngine, type AheadSteps, type AheadTask } from "../engine/ahead.ts";
import { quickAnswer } from "../lay/desk.ts";

/** A task to begin, settings of the task begun last, or null: no more is wanted. */
export type AheadOrder =
  | { readonly id: number; readonly task: AheadTask }
  | { readonly id: number; readonly from: number; readonly settings: readonly (readonly number[])[] }
  | null;

/** What was worked, beginning at the setting `from`; null when it could not be. */
export interface AheadNews {
  readonly id: number;
  readonly from: number;
  readonly worked: AheadSteps | null;
}

type Share = Extract<AheadOrder, { readonly from: number }>;

/** Works orders in turn. `pause` lets waiting messages arrive. */
export class Helper {
  #task: { readonly id: number; readonly task: AheadTask } | null = null;
  #engine: AheadEngine | null = null;
  #waiting: Share[] = [];
  #isWorking = false;

  constructor(
    private readonly tell: (news: AheadNews) => void,
    private readonly pause: () => Promise<void>,
  ) {}

  async take(order: AheadOrder): Promise<void> {
    if (order && "from" in order) {
      if (order.id === this.#task?.id) this.#waiting.push(order);
    } else {
      this.#waiting = [];
      this.#engine?.destroy();
      this.#engine = null;
      this.#task = order;
    }
    if (this.#isWorking) return;
    this.#isWorking = true;
    for (let share = this.#waiting.shift(); share; share = this.#waiting.shift()) {
      this.tell({ id: share.id, from: share.from, worked: this.#worked(share) });
      await this.pause();
    }
    this.#isWorking = false;
  }

  #worked({ settings }: Share): AheadSteps | null {
    try {
      this.#engine ??= new AheadEngine(this.#task!.task, quickAnswer);
      return this.#engine.work(settings);
    } catch {
      // Whoever asked works them as well, and says what is wrong.
      return null;
    }
  }
}
