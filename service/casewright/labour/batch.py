"""What repeating saves: the learning curve, the flat rule of five per cent, and what splitting a batch costs.

The curve belongs to a standard that holds the time of the first piece. A standard that holds the average of a
batch has the saving in it already; giving it the curve as well would count the saving twice.
"""

import math

from casewright.labour.operations import Operation, Timing
from casewright.measure.units import Count, Minutes, Number, Weeks


def learning_exponent(learning_rate: Number) -> Number:
    """The exponent of the learning curve.

    Rule: log2(learning_rate)

    Args:
        learning_rate: what a doubling of the count leaves of the time; 0.92 to 0.97 for handwork, 1 for
            planing and the like [dimensionless]

    Returns:
        Zero or below: the repeat k takes k ** exponent of the first [dimensionless]

    Raises:
        ValueError: the rate is not between 0.5 and 1.

    Source: learning curve of T. P. Wright, Factors Affecting the Cost of Airplanes (1936), by unit.
    """
    if not 0.5 <= learning_rate <= 1:
        raise ValueError(f"A learning rate of {learning_rate:g} is not one; give a number such as 0.95.")
    return math.log2(learning_rate)


def repeat_minutes(first: Minutes, repeat: Count, learning_rate: Number) -> Minutes:
    """How long one repeat takes.

    Rule: first * repeat ** log2(learning_rate)

    Args:
        first: time of the first piece [min]
        repeat: which piece of the batch it is, from 1 [dimensionless]
        learning_rate: what a doubling of the count leaves of the time [dimensionless]

    Returns:
        The time of that piece [min]

    Source: learning curve of T. P. Wright, Factors Affecting the Cost of Airplanes (1936), by unit.
    """
    return first * math.pow(repeat, learning_exponent(learning_rate))


def batch_factor(count: Count, learning_rate: Number) -> Number:
    """What the average piece of a batch takes, of the first one's time.

    Rule: (1 ** b + 2 ** b + ... + count ** b) / count, with b = log2(learning_rate)

    Args:
        count: pieces in the batch, at least 1 [dimensionless]
        learning_rate: what a doubling of the count leaves of the time [dimensionless]

    Returns:
        The factor, 1 or less [dimensionless]

    Raises:
        ValueError: the batch is empty.

    Source: learning curve of T. P. Wright, Factors Affecting the Cost of Airplanes (1936), by unit.
    """
    if count < 1:
        raise ValueError("A batch holds at least one piece.")
    exponent = learning_exponent(learning_rate)
    return math.fsum(math.pow(repeat, exponent) for repeat in range(1, count + 1)) / count


def batch_minutes(first: Minutes, count: Count, learning_rate: Number, setup: Minutes = 0.0) -> Minutes:
    """How long a batch takes when the hand learns as it goes.

    Rule: setup + count * first * batch_factor(count, learning_rate)

    Args:
        first: time of the first piece [min]
        count: pieces in the batch [dimensionless]
        learning_rate: what a doubling of the count leaves of the time [dimensionless]
        setup: what is paid once before the first piece [min]

    Returns:
        The time of the whole batch [min]

    Source: learning curve of T. P. Wright, Factors Affecting the Cost of Airplanes (1936), by unit.
    """
    return setup + count * first * batch_factor(count, learning_rate)


def steady_saving_minutes(first: Minutes, count: Count, saving: Number, greatest: Number) -> Minutes:
    """How long a batch takes by the flat rule: each repeat takes the same share of the first less.

    Rule: sum over the repeats of first * (1 - min(greatest, saving * (repeat - 1)))

    Args:
        first: time of the first piece [min]
        count: pieces in the batch [dimensionless]
        saving: what each repeat saves, as a share of the first piece's time, such as 0.05 [dimensionless]
        greatest: the saving beyond which no repeat goes, such as 0.30 [dimensionless]

    Returns:
        The time of the whole batch [min]

    Source: R. Jones, How to Price the Job, Furniture & Cabinetmaking (2009): 5 per cent less for each repeat,
        30 per cent at most.
    """
    if count < 1:
        raise ValueError("A batch holds at least one piece.")
    return math.fsum(first * (1 - min(greatest, saving * before)) for before in range(count))


def curve_starts_again(gap: Weeks, reset: Weeks) -> bool:
    """Whether a pause between two batches was so long that the hand starts again at the first piece.

    Args:
        gap: time since the last batch of the same work [week]
        reset: the pause beyond which nothing is left of the practice [week]

    Returns:
        True when the curve starts again.

    Source: common practice.
    """
    return gap > reset


def splitting_cost(
    first: Minutes,
    count: Count,
    *,
    batches: Count,
    learning_rate: Number,
    setup: Minutes,
    resets: bool = True,
) -> Minutes:
    """What it costs to make the pieces in several batches and not in one.

    Rule: setups of the further batches + what the hand forgets between them

    Args:
        first: time of the first piece [min]
        count: pieces in all [dimensionless]
        batches: into how many batches they are split, as evenly as they go [dimensionless]
        learning_rate: what a doubling of the count leaves of the time [dimensionless]
        setup: what is paid once a batch [min]
        resets: the pause between batches is long enough for the curve to start again

    Returns:
        The added time, never below zero [min]

    Raises:
        ValueError: there are more batches than pieces, or none.

    Source: common practice.
    """
    if not 1 <= batches <= count:
        raise ValueError(f"{count} pieces cannot be made in {batches} batches; make it 1 to {count}.")
    setups = setup * (batches - 1)
    if not resets:
        return setups
    smaller, larger = divmod(count, batches)
    sizes = [smaller + 1] * larger + [smaller] * (batches - larger)
    split = math.fsum(batch_minutes(first, size, learning_rate) for size in sizes)
    return setups + split - batch_minutes(first, count, learning_rate)


def repeat_factor(one: Operation, quantity: Number) -> Number:
    """The batch factor of an operation: 1 unless its standard is the time of a first piece.

    Args:
        one: the operation, which says what its minutes are
        quantity: how many there are in the batch; a part of one counts to the nearest whole [dimensionless]

    Returns:
        The factor on the minutes each [dimensionless]

    Source: common practice: averages have the saving in them already.
    """
    if one.timing is Timing.AVERAGE:
        return 1.0
    return batch_factor(max(1, round(quantity)), one.learning)
