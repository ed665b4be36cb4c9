"""Small letters of a joined hand as strokes, in the notation of strokes.py, each with how it is reached and left.

An entry is "WL stroke; stroke": W says where a join meets the letter, L where the next one leaves it.

    W  t  at the head of a stem        r, s  over the top of a round letter or an s, and back along its first curve
       e  into the loop of an e
    L  l  low, from the base line    h  high, from the top of the letter    x  by the second stroke (the bar of an f)
       n  not at all: the pencil lifts

The joins are the four that schools teach (to small and to tall letters, from the base line and from the top), and the
letters after which the pencil lifts are the usual ones: b g j p q s x y z (common practice in British schools).
"""

from __future__ import annotations

from packgen.page.strokes import BODY, SMALL

_ROUND_FOOT = "C .2 1 0 .79 0 .5 C 0 .21 .2 0 .49 0 C .66 0 .8 .05 .93 .14"


def _foot(x: float) -> str:
    """The turn to the right at the foot of a stem at x."""
    return f"L {x} .25 C {x} .08 {x + 0.07:.2f} 0 {x + 0.2:.2f} 0"


JOINED = {
    "a": f"rl {BODY} 1 {_foot(0.88)}",
    "b": f"tn {SMALL['b'][3:]}",
    "c": f"rl M .85 .82 C .76 .94 .63 1 .49 1 {_ROUND_FOOT}",
    "d": f"rl {BODY} 2 {_foot(0.88)}",
    "e": f"el M 0 .42 C .34 .46 .88 .56 .88 .78 C .88 .92 .74 1 .5 1 {_ROUND_FOOT}",
    "f": "rx M .8 1.84 C .74 1.94 .66 2 .55 2 C .36 2 .26 1.87 .26 1.62 L .26 0; M 0 1 L .62 1",
    "g": f"rn {SMALL['g'][3:]}",
    "h": f"tl M 0 2 L 0 0 L 0 .62 C .1 .86 .25 1 .44 1 C .68 1 .8 .86 .8 .6 {_foot(0.8)}",
    "i": f"tl M 0 1 {_foot(0)}; M 0 1.52 L 0 1.5",
    "j": f"tn {SMALL['j'][3:]}",
    "k": "tl M 0 2 L 0 0 L 0 .48 C .1 .8 .28 .99 .46 .97 C .7 .92 .62 .54 .1 .5 L .54 .1 C .62 .02 .7 0 .8 .02",
    "l": f"tl M 0 2 {_foot(0)}",
    "m": "tl M 0 1 L 0 0 L 0 .62 C .08 .86 .2 1 .36 1 C .56 1 .66 .86 .66 .6 L .66 0 L .66 .62"
    f" C .74 .86 .86 1 1.02 1 C 1.22 1 1.32 .86 1.32 .6 {_foot(1.32)}",
    "n": f"tl M 0 1 L 0 0 L 0 .62 C .1 .86 .25 1 .44 1 C .68 1 .8 .86 .8 .6 {_foot(0.8)}",
    "o": "rh A .46 .5 .46 .5 60 420 C .78 .86 .88 .84 1 .9",
    "p": f"tn {SMALL['p'][3:]}",
    "q": f"rn {SMALL['q'][3:]}",
    "r": "th M 0 1 L 0 0 L 0 .6 C .09 .85 .2 1 .36 1 C .48 1 .52 .88 .7 .9",
    "s": f"sn {SMALL['s'][3:]}",
    "t": f"tl M 0 1.6 {_foot(0)}; M -.28 1 L .36 1",
    "u": f"tl M 0 1 L 0 .4 C 0 .14 .12 0 .36 0 C .55 0 .7 .14 .8 .38 L .8 1 {_foot(0.8)}",
    "v": "th M 0 1 L .42 0 L .8 1 C .84 .9 .92 .87 1.04 .9",
    "w": "th M 0 1 L .34 0 L .64 1 L .96 0 L 1.28 1 C 1.32 .9 1.4 .87 1.52 .9",
    "x": f"tn {SMALL['x'][3:]}",
    "y": "tn M 0 1 L 0 .4 C 0 .14 .12 0 .36 0 C .55 0 .7 .14 .8 .38 L .8 1 L .8 -.48 C .8 -.75 .65 -.9 .4 -.9"
    " C .26 -.9 .13 -.85 .04 -.74",
    "z": f"tn {SMALL['z'][3:]}",
}

# How far right of where a letter is left the next begins, by how it is left and how the next is met.
STEPS = {"lt": 0.46, "lr": 0.3, "ls": 0.46, "le": 0.22, "ht": 0.32, "hr": 0.22, "hs": 0.3, "he": 0.18}
