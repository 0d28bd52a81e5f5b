"""A device in plain words, from what its browser says of itself."""

BROWSERS = (
    ("Edg", "Edge"),
    ("OPR/", "Opera"),
    ("SamsungBrowser", "Samsung browser"),
    ("Firefox", "Firefox"),
    ("FxiOS", "Firefox"),
    ("CriOS", "Chrome"),
    ("Chrome", "Chrome"),
    ("Safari", "Safari"),
    ("curl", "a script"),
    ("python", "a script"),
)
"""The first that is found counts: most browsers also name the ones that they resemble."""
MACHINES = (
    ("iPhone", "an iPhone"),
    ("iPad", "an iPad"),
    ("Android", "Android"),
    ("CrOS", "a Chromebook"),
    ("Windows", "Windows"),
    ("Macintosh", "a Mac"),
    ("Linux", "Linux"),
)


def device_words(agent: str) -> str:
    """Such as: Firefox on Windows, Chrome on an Android phone.

    Args:
        agent: what the browser sends as User-Agent
    """
    browser = next((words for mark, words in BROWSERS if mark.lower() in agent.lower()), "")
    machine = next((words for mark, words in MACHINES if mark in agent), "")
    if machine == "Android":
        machine = "an Android phone" if "Mobile" in agent else "an Android tablet"
    if browser and machine:
        return f"{browser} on {machine}"
    return (browser or machine or "a device that does not say what it is").capitalize()
