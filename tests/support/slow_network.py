"""A slow network between a browser and a server: latency and a bandwidth for everything on it."""

from __future__ import annotations

import asyncio
import threading
from dataclasses import dataclass


@dataclass(frozen=True)
class Network:
    """One kind of network: seconds there and back, bytes a second down and up."""

    name: str
    round_trip_s: float
    down: float
    up: float


# Effective figures that browsers' developer tools use for their throttling profiles.
FAST_3G = Network("fast 3G", 0.5625, 1_600_000 * 0.9 / 8, 750_000 * 0.9 / 8)
SLOW_3G = Network("slow 3G", 2.0, 500_000 * 0.8 / 8, 500_000 * 0.8 / 8)


class SlowNetwork:
    """Passes connections on, slowly, in a thread of its own."""

    def __init__(self, network: Network, server_port: int, port: int) -> None:
        self.network, self.server_port, self.port = network, server_port, port
        self.loop = asyncio.new_event_loop()
        self.ready = threading.Event()
        self.thread = threading.Thread(target=self._run, daemon=True)

    def __enter__(self) -> SlowNetwork:
        self.thread.start()
        self.ready.wait()
        return self

    def __exit__(self, *_: object) -> None:
        self.loop.call_soon_threadsafe(self.loop.stop)
        self.thread.join()

    def _run(self) -> None:
        asyncio.set_event_loop(self.loop)
        listening = asyncio.start_server(self._pass_on, "127.0.0.1", self.port)
        server = self.loop.run_until_complete(listening)
        self.ready.set()
        self.loop.run_forever()
        server.close()
        # Connections that are cut at the end would each complain.
        self.loop.set_exception_handler(lambda *_: None)
        left = asyncio.all_tasks(self.loop)
        for task in left:
            task.cancel()
        self.loop.run_until_complete(asyncio.gather(*left, return_exceptions=True))

    async def _pass_on(self, read: asyncio.StreamReader, write: asyncio.StreamWriter) -> None:
        # Opening a connection costs a round trip of its own.
        await asyncio.sleep(self.network.round_trip_s)
        there = await asyncio.open_connection("127.0.0.1", self.server_port)
        await asyncio.gather(
            self._flow(read, there[1], self.network.up),
            self._flow(there[0], write, self.network.down),
            return_exceptions=True,
        )

    async def _flow(
        self, source: asyncio.StreamReader, sink: asyncio.StreamWriter, rate: float
    ) -> None:
        """Bytes leave when the line is free, and arrive half a round trip later."""
        free_at = 0.0
        late: asyncio.Queue[tuple[float, bytes]] = asyncio.Queue()

        async def deliver() -> None:
            while True:
                due, data = await late.get()
                await asyncio.sleep(max(due - self.loop.time(), 0.0))
                sink.write(data)
                await sink.drain()
                if not data:
                    sink.close()
                    return

        delivering = asyncio.ensure_future(deliver())
        while data := await source.read(4096):
            free_at = max(free_at, self.loop.time()) + len(data) / rate
            late.put_nowait((free_at + self.network.round_trip_s / 2, data))
        late.put_nowait((self.loop.time() + self.network.round_trip_s / 2, b""))
        await delivering
