// `npm start`: installs what is missing, builds the planner, and serves it to this machine until Ctrl-C.
import { spawn } from "node:child_process";
import { build, builtFolder } from "./build.mjs";
import { install } from "./install.mjs";
import { serve } from "./serve.mjs";

const DEFAULT_PORT = 4173;

/** The port asked for in PORT, else the default; nothing where PORT is no port. */
function wantedPort() {
  const text = process.env.PORT ?? "";
  if (text === "") return DEFAULT_PORT;
  return /^\d{1,5}$/.test(text) && Number(text) <= 65535 ? Number(text) : undefined;
}

/**
 * Opens the address in the person's browser where there is a desktop. The address is printed anyhow, so a
 * failure here is no failure of ours.
 * @param {string} url
 */
function openBrowser(url) {
  if (process.env.CI) return;
  const hasDisplay = Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
  const [program, args] =
    process.platform === "darwin"
      ? ["open", [url]]
      : process.platform === "win32"
        ? ["cmd", ["/c", "start", "", url]]
        : ["xdg-open", [url]];
  if (program === "xdg-open" && !hasDisplay) return;
  const opener = spawn(program, args, { stdio: "ignore", detached: true });
  opener.on("error", () => {});
  opener.unref();
}

/**
 * Until Ctrl-C or a signal. npm passes a signal on to its shell, which does not pass it on to us: then our parent is
 * gone and another one has us, and a server nobody knows of would keep the port.
 */
function untilStopped() {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, resolve);
    const parent = process.ppid;
    const watch = setInterval(() => {
      if (process.ppid === parent) return;
      clearInterval(watch);
      resolve(undefined);
    }, 1000);
    watch.unref();
  });
}

async function start() {
  const port = wantedPort();
  if (port === undefined) {
    console.error(`PORT must be a whole number from 0 to 65535; got ${process.env.PORT}.`);
    return 1;
  }
  if (!(await install())) return 1;
  console.log("Building the planner.");
  if ((await build()) !== 0) {
    console.error("The build failed, so there is nothing to serve.");
    return 1;
  }
  const server = await serve({ folder: builtFolder, port });
  if (port !== 0 && server.port !== port) {
    console.log(
      `Port ${port} is taken. A browser keeps saved work apart by port: jobs saved there are not shown here.`,
    );
  }
  console.log("Open this address in a browser (Ctrl-C stops):");
  console.log(server.url);
  openBrowser(server.url);
  await untilStopped();
  await server.close();
  console.log("Stopped.");
  return 0;
}

process.exitCode = await start();
