// The board's script: without it every action is a form; with it the mouse and the arrow keys work.
import { answers } from "./answers.js";
import { dragging } from "./drag.js";
import { keys } from "./keys.js";
import { days } from "./days.js";

answers();
dragging();
keys();
days();
