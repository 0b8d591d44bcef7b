@echo off
rem Starts Railwitness with the flags that suit it. JAVA_HOME says which Java; else the first one found is taken.
setlocal
set "jar=%~dp0railwitness.jar"
if not exist "%jar%" set "jar=%~dp0..\railwitness.jar"
if not exist "%jar%" set "jar=%~dp0..\target\railwitness.jar"
if not exist "%jar%" (
  echo railwitness.jar is missing; build it with: mvn -DskipTests package 1>&2
  exit /b 1
)
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
rem The quick compiler keeps the window from stalling; long computations do better with both.
set "flags=-Xms64m -XX:+UseSerialGC"
set "quick="
if "%~1"=="" set "quick=1"
for %%c in (window run rehearse ports ask check stand-in) do if "%~1"=="%%c" set "quick=1"
if defined quick set "flags=%flags% -XX:TieredStopAtLevel=1"
"%java%" %flags% -jar "%jar%" %*
exit /b %ERRORLEVEL%
