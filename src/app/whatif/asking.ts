/** What every panel of What if is given. */
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import type { QuestionClient } from "../../worker/question-client.ts";
import type { Trying } from "./trying.ts";

export interface Asking {
  readonly store: Store;
  /** The selected cell. */
  readonly place: Place;
  readonly trying: Trying;
  readonly client: QuestionClient;
}
