"""The web page of each example in a browser: no message, nothing wider than the window, few sheets of either paper.

    browser.py BROWSER PROGRAM [FOLDER]     FOLDER keeps pages, pictures and prints
"""
import html
import pathlib
import re
import subprocess
import sys
import tempfile

WIDTHS = (360, 760, 1280)
PAPERS = ("A4", "Letter")
MOST_SHEETS = 4
# No window of a browser is as narrow as a phone, a frame is.
FRAME = """<!doctype html><title></title><body style="margin:0"><iframe style="border:0;width:{width}px;height:9000px" srcdoc="{page}">
</iframe><script>onload = () => {{ document.title = document.querySelector("iframe").contentDocument.documentElement
.scrollWidth }}</script>"""


def main(browser, program, folder):
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)

    def browse(*arguments):
        command = [browser, "--headless", "--no-sandbox", "--disable-gpu", "--enable-logging=stderr", *arguments]
        done = subprocess.run(command, capture_output=True, text=True, timeout=120)
        console = [line for line in done.stderr.splitlines() if "CONSOLE" in line]
        assert not console, console
        return done.stdout

    for drive in sorted(pathlib.Path("examples").glob("*.yaml")):
        page = folder / f"{drive.stem}.html"
        made = subprocess.run([program, "assess", "--format", "html", drive], capture_output=True, text=True)
        assert not made.stderr, made.stderr
        page.write_text(made.stdout)
        for width in WIDTHS:
            frame = folder / f"{drive.stem}_{width}.html"
            frame.write_text(FRAME.format(width=width, page=html.escape(made.stdout)))
            picture = f"--screenshot={frame.with_suffix('.png')}"
            seen = browse("--window-size=1280,4000", "--dump-dom", frame.as_uri())
            wide = int(re.search(r"<title>(\d+)</title>", seen).group(1))
            assert wide <= width, f"{drive.stem}: {wide} wide in a window of {width}"
            browse(f"--window-size={max(width, 500)},4000", picture, frame.as_uri())
        counts = []
        for paper in PAPERS:
            sized = folder / f"{drive.stem}_{paper}.html"
            sized.write_text(made.stdout.replace("@page{", f"@page{{size:{paper};", 1))
            printed = sized.with_suffix(".pdf")
            browse("--no-pdf-header-footer", f"--print-to-pdf={printed}", sized.as_uri())
            sheets = len(re.findall(rb"/Type\s*/Page\b", printed.read_bytes()))
            assert 1 <= sheets <= MOST_SHEETS, f"{drive.stem}: {sheets} sheets of {paper}"
            counts.append(f"{sheets} sheets of {paper}")
        print(f"{drive.stem}: {', '.join(counts)}, nothing too wide, no message")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as own:
        main(*sys.argv[1:3], *(sys.argv[3:4] or [own]))
