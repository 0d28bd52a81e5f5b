"""A few pages with known faults, to try the watching of pages on: python tiny_site.py --port N."""

import sys

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, Response
from starlette.routing import Route

POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'"
FRAME = """<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>{name}</title>
<meta name="viewport" content="width=device-width"><link rel="icon" href="data:,"></head>
<body><main><h1>{name}</h1>{body}</main></body></html>"""
BODIES = {
    "plain": "<p id='p'>Nothing wrong here.</p><script src='/mark.js'></script>",
    "inline": "<script>document.title = 'ran'</script>",
    "throwing": "<script src='/throw.js'></script>",
    "complaining": "<script src='/complain.js'></script>",
    "elsewhere": "<img src='http://elsewhere.test/a.png' alt='A board'>",
    "lacking": "<img src='/missing.png' alt='A board'>",
    "nameless": "<label>Width</label><input><a href='/plain'><img src='data:,' alt=''></a>",
    "cramped": "<button class='small'>1</button><link rel='stylesheet' href='/small.css'><button>2</button>",
    "folded": "<link rel='stylesheet' href='/folded.css'><button class='narrow'></button>",
    "faint": "<link rel='stylesheet' href='/faint.css'><p>Cut it 1/32 long.</p>",
    "small by touch": "<link rel='stylesheet' href='/touch.css'><button>1</button><button>2</button>",
}
FILES = {
    "mark.js": ("text/javascript", "document.querySelector('h1').textContent = 'marked'"),
    "throw.js": ("text/javascript", "throw new Error('no such joint')"),
    "complain.js": ("text/javascript", "console.warn('this board is short')"),
    "small.css": ("text/css", "button { width: 9px; height: 9px; padding: 0; margin: 0; border: 0; }"),
    "folded.css": ("text/css", "@media (min-width: 40rem) { .narrow { display: none; } }"),
    "faint.css": (
        "text/css",
        "@media (prefers-color-scheme: dark) { p { background: #222; color: #333; } }",
    ),
    "touch.css": (
        "text/css",
        "@media (width < 40rem) { button { all: unset; display: block; height: 9px; } }",
    ),
}


def show_page(request: Request) -> Response:
    """The page of that name, under the policy that the service has too."""
    name = request.path_params["name"]
    if name == "broken":
        return PlainTextResponse("broken", status_code=500)
    if name not in BODIES:
        page = FRAME.format(name="Not here", body="<p>There is no such page.</p>")
        return HTMLResponse(page, status_code=404, headers={"Content-Security-Policy": POLICY})
    page = FRAME.format(name=name, body=BODIES[name])
    return HTMLResponse(page, headers={"Content-Security-Policy": POLICY})


def show_file(request: Request) -> Response:
    """A script or a style sheet."""
    kind, text = FILES[request.url.path.removeprefix("/")]
    return Response(text, media_type=kind)


def show_health(request: Request) -> Response:
    """That it runs."""
    return PlainTextResponse("well")


if __name__ == "__main__":
    routes = [Route("/healthz", show_health)]
    routes += [Route(f"/{name}", show_file) for name in FILES]
    routes += [Route("/{name}", show_page)]
    sys.stdout.write("Set-up code: 13-7-32\n")
    uvicorn.run(Starlette(routes=routes), port=int(sys.argv[-1]), log_level="warning")
