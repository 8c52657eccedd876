using System.Globalization;

namespace Clutchwright.Desk.Calendar;

/// <summary>What to expect, what to prepare and what is late.</summary>
/// <param name="On">The day it was reckoned on: what was written of later days has no part in it.</param>
/// <param name="From">The first day that is told of.</param>
/// <param name="To">The last day that is told of.</param>
/// <param name="Overdue">What is later than it should be, gravest first.</param>
/// <param name="Due">What is due between the two days, by its most likely day; what is overdue is left out.</param>
/// <param name="Tasks">What to prepare by then, by its day.</param>
/// <param name="Past">What happened from <paramref name="From"/> to <paramref name="On"/>, the latest first.</param>
/// <param name="Learnt">What each interval takes, by the species data and by the book.</param>
/// <param name="Doubts">Records that cannot be as they stand and were left out, in sentences.</param>
/// <param name="Moved">A number that never falls, and rises when the book or the day changes.</param>
/// <param name="ChangedAt">When the book last changed; <c>null</c>: it is empty.</param>
public sealed record CalendarAnswer(
    DateOnly On,
    DateOnly From,
    DateOnly To,
    IReadOnlyList<CalendarDue> Overdue,
    IReadOnlyList<CalendarDue> Due,
    IReadOnlyList<CalendarTask> Tasks,
    IReadOnlyList<CalendarPast> Past,
    IReadOnlyList<CalendarLearnt> Learnt,
    IReadOnlyList<string> Doubts,
    long Moved,
    DateTimeOffset? ChangedAt)
{
    /// <summary>Gets whether there is nothing at all to tell.</summary>
    public bool IsEmpty => Overdue.Count + Due.Count + Tasks.Count + Past.Count == 0;
}

/// <summary>How late something is.</summary>
public enum CalendarLevel
{
    /// <summary>In its time.</summary>
    InTime = 0,

    /// <summary>Later than nine in ten: look.</summary>
    Late,

    /// <summary>Later than almost all: do something.</summary>
    Overdue,
}

/// <summary>Two days and those between.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last.</param>
public sealed record CalendarDays(DateOnly From, DateOnly To);

/// <summary>A step that is due.</summary>
/// <param name="Id">The same for as long as the step is due, whatever its day.</param>
/// <param name="Step">The step, by its name.</param>
/// <param name="What">In words, with the animal, such as "Eggs of T-102".</param>
/// <param name="Tag">The female, or the dam of the hatchlings.</param>
/// <param name="Animals">The hatchlings that it is about; empty: it is about the female or her clutch.</param>
/// <param name="Likely">The most likely day; <c>null</c>: no day is expected any more.</param>
/// <param name="Median">The day by which it has happened with one chance in two.</param>
/// <param name="Half">The days that hold it with a chance of 50 %.</param>
/// <param name="Nine">The days that hold it with a chance of 90 %.</param>
/// <param name="StillOpen">The chance that it has not happened by the day asked if all is well.</param>
/// <param name="WillHappen">The chance that it happens at all this season; 1: it is taken to.</param>
/// <param name="Level">How late it is.</param>
/// <param name="Advice">What to do; <c>null</c>: nothing but wait.</param>
/// <param name="Why">From which records and figures it was reckoned, in sentences.</param>
public sealed record CalendarDue(
    string Id,
    string Step,
    string What,
    string Tag,
    IReadOnlyList<string> Animals,
    DateOnly? Likely,
    DateOnly? Median,
    CalendarDays? Half,
    CalendarDays? Nine,
    double StillOpen,
    double WillHappen,
    CalendarLevel Level,
    string? Advice,
    IReadOnlyList<string> Why)
{
    /// <summary>Gets the clutch that it is about; <c>null</c>: none that is in the book.</summary>
    public string? Clutch { get; init; }
}

/// <summary>Something to prepare.</summary>
/// <param name="Id">The same for as long as it is to be done, whatever its day.</param>
/// <param name="By">The day by which it should be ready.</param>
/// <param name="What">What, in a sentence without a full stop.</param>
/// <param name="Tag">For which female.</param>
/// <param name="For">The step that it is for.</param>
public sealed record CalendarTask(string Id, DateOnly By, string What, string Tag, CalendarDue For)
{
    /// <summary>Gets what it is for and when that is due.</summary>
    public string Because =>
        string.Create(CultureInfo.InvariantCulture, $"{For.What}: most likely {For.Likely:yyyy-MM-dd}, 9 in 10 from {For.Nine!.From:yyyy-MM-dd} to {For.Nine.To:yyyy-MM-dd}");
}

/// <summary>Something that happened.</summary>
/// <param name="Day">The last day on which it can have been.</param>
/// <param name="When">As the keeper put it.</param>
/// <param name="Tag">The animal.</param>
/// <param name="What">What.</param>
public sealed record CalendarPast(DateOnly Day, string When, string Tag, string What);

/// <summary>What an interval takes.</summary>
/// <param name="Interval">Its name, such as <c>ovulation-to-eggs-days</c>.</param>
/// <param name="Words">In words.</param>
/// <param name="PriorMean">The mean of the species data, in days.</param>
/// <param name="PriorSd">The standard deviation of that.</param>
/// <param name="Grade">How well that is known.</param>
/// <param name="Weight">How many records it weighs as much as.</param>
/// <param name="Records">Intervals of the book that it was learnt from.</param>
/// <param name="Mean">The mean expected of a female without records of her own.</param>
/// <param name="Sd">The standard deviation of that.</param>
public sealed record CalendarLearnt(
    string Interval, string Words, double PriorMean, double PriorSd, string Grade, double Weight, int Records, double Mean, double Sd);
