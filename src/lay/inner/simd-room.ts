/**
 * The inner loop as WebAssembly, and the choice between it and its plain twin: both give the same answers to the last
 * bit. Only what searches loads this file.
 */
import bytes from "virtual:inner-loop";
import { type Host, PlainRoom, type Program, Room } from "./room.ts";

const PAGE = 65536;
const FIRST_PAGES = 4;

export class SimdRoom extends Room {
  readonly program: Program;
  private readonly memory = new WebAssembly.Memory({ initial: FIRST_PAGES });

  constructor(host: Host, module = compiled()) {
    super(host);
    this.view(this.memory.buffer);
    const { exports } = new WebAssembly.Instance(module, {
      env: { memory: this.memory },
      host: { ...host },
    });
    this.program = exports as unknown as Program;
  }

  protected enlarged(size: number): ArrayBuffer {
    const { byteLength } = this.memory.buffer;
    this.memory.grow(Math.ceil((size - byteLength + byteLength / 2) / PAGE));
    return this.memory.buffer;
  }
}

/** For all searches. */
let made: WebAssembly.Module | undefined;

function compiled(): WebAssembly.Module {
  made ??= new WebAssembly.Module(Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0)));
  return made;
}

/** A room for a search: a plain one where there is no WebAssembly with SIMD, where it is not allowed, or where it gets no memory. */
export function newRoom(host: Host): Room {
  try {
    return new SimdRoom(host);
  } catch {
    return new PlainRoom(host);
  }
}
