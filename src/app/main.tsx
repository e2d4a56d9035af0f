/** The page: opens the book that was open last and shows it. */
import "./shell/theme.css";
import "./shell/shell.css";
import { createRoot } from "react-dom/client";
import { start } from "./files/start.ts";
import { App } from "./shell/App.tsx";

const begun = await start();
createRoot(document.getElementById("page")!).render(<App {...begun} />);
